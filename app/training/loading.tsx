import { Loading } from '@/app/_look/loading';

export default function TrainingLoading() {
  return <Loading title="Training" />;
}
