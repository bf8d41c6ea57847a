import { lazy } from 'react';

/** What stands beside the one thing to do comes after it, when it is opened. */
export const loadBeside = () =>
  Promise.all([import('./so-far'), import('./correct-form'), import('./leave-form'), import('./clashes')]);

export const SoFar = lazy(() => import('./so-far').then((file) => ({ default: file.SoFar })));
export const CorrectForm = lazy(() =>
  import('./correct-form').then((file) => ({ default: file.CorrectForm })),
);
export const LeaveForm = lazy(() => import('./leave-form').then((file) => ({ default: file.LeaveForm })));
export const Clashes = lazy(() => import('./clashes').then((file) => ({ default: file.Clashes })));
