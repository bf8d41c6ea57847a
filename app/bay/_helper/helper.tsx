'use client';

import { useTranslations } from 'use-intl/react';
import { bareMillimetres, millimetres } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import {
  centresFromInside,
  halfWidth,
  insideFromOutside,
  restOfTracking,
  setHeight,
  unequalPointerError,
} from '@/lib/measure/trade';
import { Explaining } from './explaining';
import { Sum } from './sum';
import styles from './helper.module.css';

/** The arithmetic of setting a gauge, in millimetres and inches. @param clearance of the round, mm, if there is one. */
export default function Helper({ clearance }: { clearance: number | null }) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const show = (value: number) => millimetres(value, 1, to);
  return (
    <div className={styles.helper} data-typing>
      <Sum
        title={t('helper.height')}
        fields={[
          [t('helper.sheetHeight'), ''],
          [t('helper.clearance'), clearance === null ? '' : bareMillimetres(clearance, 1, to)],
        ]}
        answer={([sheet = 0, added = 0]) => t('helper.setHeight', { value: show(setHeight(sheet, added)) })}
      />
      <Sum
        title={t('helper.width')}
        fields={[[t('helper.wholeWidth'), '']]}
        answer={([width = 0]) => t('helper.halfWidth', { value: show(halfWidth(width)) })}
      />
      <Sum
        title={t('helper.pointers')}
        fields={[
          [t('helper.outside'), ''],
          [t('helper.first'), ''],
          [t('helper.second'), ''],
        ]}
        answer={([outside = 0, a = 0, b = 0]) => {
          const inside = insideFromOutside(outside, a, b);
          return t('helper.inside', { inside: show(inside), centres: show(centresFromInside(inside, a, b)) });
        }}
      />
      <Sum
        title={t('helper.unequal')}
        fields={[
          [t('helper.length'), ''],
          [t('helper.difference'), ''],
        ]}
        answer={([length = 0, difference = 0]) =>
          t('helper.error', {
            value: millimetres(unequalPointerError(length, difference), 2, to),
            difference: show(difference),
          })
        }
      />
      <Explaining />
      <Sum
        title={t('helper.tracking')}
        fields={[
          [t('helper.whole'), ''],
          [t('helper.third'), ''],
        ]}
        answer={([whole = 0, third = 0]) => t('helper.rest', { value: show(restOfTracking(whole, third)) })}
      />
    </div>
  );
}
