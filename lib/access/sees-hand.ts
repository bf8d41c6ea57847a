import type { Viewer } from '@/lib/identity';
import { may } from './may';

/** Everybody sees the own hand; a colleague's only who sees everybody's figures. */
export const seesHand = (viewer: Viewer, code: string): boolean =>
  code === viewer.code || may(viewer, 'see everybody’s figures');
