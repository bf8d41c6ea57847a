import { Loading } from '@/app/_look/loading';

export default function GaugesLoading() {
  return <Loading title="Gauges" />;
}
