import { Loading } from '@/app/_look/loading';

export default function JobsLoading() {
  return <Loading title="Jobs" />;
}
