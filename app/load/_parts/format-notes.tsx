import { Table } from '@/app/_look/table';
import prose from '@/app/_look/prose.module.css';
import { words } from '@/app/_words/words';
import { COLUMNS } from '@/lib/measure/file/columns';

export function FormatNotes() {
  const t = words('load');
  return (
    <div className={prose.prose}>
      <p>{t('format.text')}</p>
      <details>
        <summary>{t('format.columns')}</summary>
        <Table
          caption={t('format.caption')}
          rows={COLUMNS}
          rowKey={(name) => name}
          columns={[
            { key: 'name', head: t('format.column'), names: true, cell: (name) => <code>{name}</code> },
            { key: 'needed', head: t('format.needed'), cell: (name) => t(`columns.${name}.needed`) },
            { key: 'meaning', head: t('format.meaning'), cell: (name) => t(`columns.${name}.meaning`) },
          ]}
        />
      </details>
    </div>
  );
}
