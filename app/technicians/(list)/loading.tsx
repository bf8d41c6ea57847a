import { Loading } from '@/app/_look/loading';

export default function TechniciansLoading() {
  return <Loading title="Technicians" />;
}
