import { Loading } from '@/app/_look/loading';

export default function OverviewLoading() {
  return <Loading title="Overview" />;
}
