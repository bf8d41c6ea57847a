import prose from '@/app/_look/prose.module.css';

export function WhoMay() {
  return (
    <div className={prose.prose}>
      <ul>
        <li>
          A <b>technician</b> sees the own figures beside the shop’s band, and the rounds in which they hung a
          gauge; records what a re-check showed there. Never a colleague’s figures.
        </li>
        <li>
          A <b>trainer</b> sees everybody’s figures and all rounds, loads files, keeps gauges and sheets, and
          runs trials.
        </li>
        <li>
          The <b>manager</b> does all of this, and keeps people, settings and the trace.
        </li>
      </ul>
    </div>
  );
}
