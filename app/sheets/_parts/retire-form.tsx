import button from '@/app/_look/button.module.css';
import { sheetAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';

export function RetireForm({ sheet, retired }: { sheet: string; retired: boolean }) {
  const t = words('sheets');
  return (
    <form action={`${sheetAddress(sheet)}/retire`} method="post">
      <input type="hidden" name="retired" value={retired ? 'no' : 'yes'} />
      <button type="submit" className={button.button}>
        {t(retired ? 'retire.doBack' : 'retire.do')}
      </button>
    </form>
  );
}
