import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { jobAddress, roundAnchor } from '@/app/_words/address';
import { CAUSE_PROVED } from '@/app/_words/proved';
import { probability, signed } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { CALL_GLYPHS, CALL_NAMES } from '@/app/_words/verdicts';
import { callOf } from '@/lib/assess';
import type { StoredHeight } from '@/lib/access';

const SHOWN = 12;

interface DoubtfulHeightsProps {
  heights: StoredHeight[];
  timeZone: string;
  /** What missing damage costs against a needless re-hang. */
  missCost: number;
}

/** The latest heights where gauge or body may be off: what was gauge, what was body. */
export function DoubtfulHeights({ heights, timeZone, missCost }: DoubtfulHeightsProps) {
  const doubtful = heights
    .filter((height) => !height.zero && callOf(height.p, missCost) !== 'nothing-found')
    .slice(0, SHOWN);
  return (
    <Panel
      id="heights"
      title="Latest heights in doubt"
      note="Likely gauge always means: re-hang and read again."
    >
      <Table
        caption={`The newest ${SHOWN} heights where gauge, body or both may be off by more than the tolerance`}
        rows={doubtful}
        rowKey={(height) => `${height.job} ${height.setup} ${height.point} ${height.side}`}
        empty="No height of the latest setups is in doubt."
        columns={[
          {
            key: 'job',
            head: 'Job and setup',
            names: true,
            cell: (height) => (
              <a href={`${jobAddress(height.job)}#${roundAnchor(height.stage, height.attempt)}`}>
                {height.job} {height.setup}
              </a>
            ),
          },
          {
            key: 'point',
            head: 'Height',
            whole: true,
            cell: (height) => `${height.point} ${height.side === 'L' ? 'left' : 'right'}`,
          },
          {
            key: 'deviation',
            head: 'Deviation, mm',
            numeric: true,
            cell: (height) => signed(height.deviation),
          },
          {
            key: 'verdict',
            head: 'Gauge or body',
            cell: (height) => {
              const call = callOf(height.p, missCost);
              return <Tag name={CALL_GLYPHS[call]}>{CALL_NAMES[call]}</Tag>;
            },
          },
          {
            key: 'gaugeShare',
            head: 'Gauge off, probability',
            numeric: true,
            cell: (height) => probability(height.p.gauge + height.p.both),
          },
          {
            key: 'bodyShare',
            head: 'Body off, probability',
            numeric: true,
            cell: (height) => probability(height.p.body + height.p.both),
          },
          {
            key: 'cause',
            head: 'A re-check showed',
            whole: true,
            cell: (height) => (height.cause === null ? 'none on record' : CAUSE_PROVED[height.cause]),
          },
          { key: 'gauge', head: 'Gauge', cell: (height) => height.gauge },
          { key: 'time', head: 'Hung', whole: true, cell: (height) => dayAndTime(height.hungAt, timeZone) },
        ]}
      />
    </Panel>
  );
}
