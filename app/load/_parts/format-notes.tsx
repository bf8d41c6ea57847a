import { Table } from '@/app/_look/table';
import prose from '@/app/_look/prose.module.css';

const COLUMNS: [name: string, needed: string, meaning: string][] = [
  ['job', 'yes', 'the shop’s job number'],
  ['sheet', 'no', 'name of the dimension sheet'],
  ['stage', 'yes', 'before or after the repair'],
  ['attempt', 'no, 1', '1 for the first measuring round of that stage, 2 for the next'],
  ['taken_at', 'yes', 'date and time, ISO 8601; without an offset in the shop’s time zone'],
  ['technician', 'yes', 'the technician’s code'],
  ['gauge', 'yes', 'the gauge’s asset tag'],
  ['gauge_kind', 'no', 'tram, digital-tram, tracking, centering, strut or tape'],
  ['setup', 'yes', 'label of one setting and hanging of one gauge, unique within a job'],
  ['quantity', 'yes', 'length, height or centerline'],
  ['point', 'yes', 'the sheet’s letter, K; for a length both ends, K-N'],
  ['side', 'heights', 'L or R'],
  ['section', 'no', 'front, center or rear'],
  ['station_mm', 'heights, centerline', 'place along the vehicle, front to rear, any origin'],
  ['zero', 'no, no', 'yes at the two zero stations'],
  ['nominal_mm', 'unless the sheet is known', 'the sheet’s value'],
  ['tolerance_mm', 'no, 3', 'half width of the tolerance'],
  ['clearance_mm', 'no, 0', 'what was added to every height of the round'],
  ['repeat', 'no', '1, 2, … within a setup'],
  ['value_mm', 'yes', 'the reading as read, clearance included'],
  ['cause', 'no', 'what a re-check proved: gauge, body, both or neither'],
];

export function FormatNotes() {
  return (
    <div className={prose.prose}>
      <p>
        One reading a line under a row of column names, in any order; comma, semicolon or tab between the
        fields; lengths in millimetres. A file with a fault is refused as a whole. The same file twice adds
        nothing.
      </p>
      <details>
        <summary>The columns</summary>
        <Table
          caption="Columns of a measurement file"
          rows={COLUMNS}
          rowKey={([name]) => name}
          columns={[
            { key: 'name', head: 'Column', names: true, cell: ([name]) => <code>{name}</code> },
            { key: 'needed', head: 'Needed', cell: ([, needed]) => needed },
            { key: 'meaning', head: 'Meaning', cell: ([, , meaning]) => meaning },
          ]}
        />
      </details>
    </div>
  );
}
