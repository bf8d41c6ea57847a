import { signedMillimetres } from '@/app/_words/numbers';
import { callInSentence } from '@/app/_words/verdicts';
import { words } from '@/app/_words/words';
import type { Scene, SceneRound } from './scene';

/** What a picture shows, in sentences: every height by side from front to rear, what is out of the lengths and pins. */
export function inWords(scene: Scene, round: SceneRound, earlier: SceneRound | null): string {
  const t = words('jobs');
  const sentences = [t('picture.label.opening', { round: round.name })];
  for (const side of ['L', 'R'] as const) {
    const told = scene.points
      .filter((point) => point.side === side)
      .sort((a, b) => a.station - b.station)
      .flatMap((point) => {
        const of = ({ heights }: SceneRound) =>
          heights.find((one) => one.letter === point.letter && one.side === side);
        const [now, before] = [of(round), earlier === null ? undefined : of(earlier)];
        if (now === undefined) return [];
        const was =
          before === undefined
            ? ''
            : ` ${t('picture.label.was', { size: signedMillimetres(before.deviation) })}`;
        const size = signedMillimetres(now.deviation) + was;
        const call = point.zero ? t('picture.label.zero') : callInSentence(now.call);
        return [`${point.letter} ${size}, ${call}`];
      });
    if (told.length > 0) sentences.push(t(`picture.label.side.${side}`, { points: told.join('; ') }));
  }
  const out = (list: readonly { within: boolean; deviation: number; name: string }[]) =>
    list
      .filter(({ within }) => !within)
      .map(({ name, deviation }) => `${name} ${signedMillimetres(deviation)}`)
      .join('; ');
  const lengths = out(round.lengths);
  if (round.lengths.length > 0)
    sentences.push(
      lengths === '' ? t('picture.label.noLengthOut') : t('picture.label.lengthsOut', { lengths }),
    );
  const pins = out(round.pins.map(({ letter, ...pin }) => ({ ...pin, name: letter })));
  if (round.pins.length > 0)
    sentences.push(pins === '' ? t('picture.label.noPinOut') : t('picture.label.pinsOut', { pins }));
  if (scene.zone !== null) sentences.push(t(`picture.label.zone.${scene.zone}`));
  return sentences.join(' ');
}
