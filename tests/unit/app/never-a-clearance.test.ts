import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { catalogue } from '@/app/_words/catalogue';
import { cautions } from '@/app/_words/cautions';
import { causeProved } from '@/app/_words/proved';
import { callName, CALLS, callSentence, causeName } from '@/app/_words/verdicts';
import { CAUSES } from '@/lib/measure';
import { assessRound } from '@/lib/assess';
import { SLIP_WORDS } from '@/lib/assess/cause/signature';
import { datumWords, hypothesisWords, leftOverWords, weighingWords } from '@/app/jobs/[job]/evidence/_words';
import { evidenceOf } from '@/lib/assess/evidence';
import { knownShop } from '@/tests/simulation/known';
import { simulateShop } from '@/tests/simulation/shop';

/** What would read as a clearance of the structure. */
const CLEARANCE = [
  /\bno (structural )?damage\b/i,
  /\b(undamaged|unharmed|intact|flawless|roadworthy)\b/i,
  /\bnot damaged\b/i,
  /\bdamage[- ]free\b/i,
  /\bfree (of|from) damage\b/i,
  /\bsafe(ly|ty)?\b/i,
  /\bsound\b/i,
  /\b(structure|body|vehicle|point|it) (is|was) (ok|okay|fine|good|straight|right|clear|clean|in order)\b/i,
  /\bclear(s|ed|ing)? (of|for|the|a) (structure|vehicle|body|road|repair)/i,
  // The round number that lifts the bars clear is a clearance too: that of a round, never of a structure.
  /\bclearance of (?!its round)/i,
  /\bnothing (is |was )?(wrong|out|damaged)\b/i,
  /\b(all|everything) (is )?(good|clear|fine|in order)\b/i,
  /\bfit to (drive|use)\b/i,
  /\bpass(es|ed)?\b.*\b(structure|vehicle|body)\b/i,
];

/** A sentence that says that something is *not* such a clearance. */
const DENIES = /\b(never|not|no value|none|nor)\b/i;

const GERMAN_CLEARANCE = [
  /\bkein(e|en)? (Struktur)?sch(a|ä)den\b/i,
  /\b(unbeschädigt|unversehrt|intakt|einwandfrei|verkehrssicher|fahrtüchtig|schadenfrei)/i,
  /\bnicht beschädigt\b/i,
  /\bfrei von Schäden\b/i,
  /\b(Struktur|Karosserie|Fahrzeug|Punkt) (ist|war|steht) (in Ordnung|gut|gerade|heil|richtig|frei)\b/i,
  /\bfrei(gabe|gegeben|zugeben)\b/i,
  /\bgibt\b.*\bfrei\b/i,
  /\b(alles|nichts) (ist |war )?(gut|in Ordnung|beschädigt|verzogen)\b/i,
];

const GERMAN_DENIES = /\b(nie|niemals|nicht|kein (Wert|Fahrzeug))\b/i;

const offends = (sentence: string): boolean => CLEARANCE.some((words) => words.test(sentence));

describe('no verdict reads as a clearance', () => {
  it.each([
    ['calls', CALLS.map(callName)],
    ['sentences of calls', CALLS.map(callSentence)],
    ['causes', [...CAUSES.map(causeName), ...CAUSES.map(causeProved)]],
    ['slips', Object.values(SLIP_WORDS).filter((words) => words !== null)],
  ])('in the names of %s', (_, words) => {
    expect(words.filter(offends)).toEqual([]);
  });

  it('in what is said of the rounds of a simulated shop: hypotheses, evidence, next checks', () => {
    const learned = knownShop();
    const said = simulateShop({ seed: 11, jobs: 25 })
      .jobs.flatMap((job) => job.rounds)
      .flatMap((round) => {
        const verdict = assessRound(round, learned, { unread: [{ point: 'A-C' }] });
        const found = evidenceOf(round, learned);
        if ('why' in found) return [found.why];
        return [
          verdict.why ?? '',
          ...verdict.nextChecks.map(({ words }) => words),
          ...found.hypotheses.flatMap((one) => [
            hypothesisWords(one),
            datumWords(one.datum),
            leftOverWords(one.bars),
          ]),
          ...weighingWords(found.weighing, ['A', 'B']),
        ];
      });
    expect(said.length).toBeGreaterThan(300);
    expect(said.filter(offends)).toEqual([]);
  });

  it('and whatever blames the gauge ends in hanging it again and reading again', () => {
    for (const call of ['likely-gauge', 'likely-both', 'undecided'] as const)
      expect(callSentence(call)).toMatch(/re-hang (it|the gauge)? ?and read again\.$/);
    expect(callSentence('likely-body')).toMatch(/before anybody pulls\.$/);
  });
});

describe('every sentence of the pages', () => {
  const sentences = [
    ...[...filesIn('app'), ...filesIn('lib/assess')].flatMap((file) => sentencesOf(file, textsOf(file))),
    ...sentencesOf('the catalogue', wordsIn(catalogue.en)),
  ];

  it('is looked at', () => {
    const all = sentences.map(({ sentence }) => sentence);
    expect(all.length).toBeGreaterThan(700);
    expect(all).toContain('It never means that there is no damage.');
    expect(all).toContain(callSentence('nothing-found'));
  });

  it('that speaks of a clearance denies it', () => {
    const wrong = sentences.filter(({ sentence }) => offends(sentence) && !DENIES.test(sentence));
    expect(wrong).toEqual([]);
  });

  it('is searched with words that find what they should', () => {
    for (const sentence of [
      'No damage found.',
      'The structure is sound.',
      'This vehicle is safe.',
      'The body is fine.',
      'Nothing wrong here.',
    ])
      expect(offends(sentence), sentence).toBe(true);
    expect(cautions().filter(({ text }) => offends(text)).length).toBeGreaterThan(0);
  });
});

describe('every sentence in German', () => {
  const sentences = sentencesOf('the catalogue', wordsIn(catalogue.de));

  it('that speaks of a clearance denies it', () => {
    const speaks = sentences.filter(({ sentence }) => GERMAN_CLEARANCE.some((words) => words.test(sentence)));
    expect(speaks.length).toBeGreaterThan(1);
    expect(speaks.filter(({ sentence }) => !GERMAN_DENIES.test(sentence))).toEqual([]);
  });

  it('is searched with words that find what they should', () => {
    for (const sentence of [
      'Kein Schaden gefunden.',
      'Die Struktur ist in Ordnung.',
      'Das Fahrzeug ist verkehrssicher.',
      'Die Karosserie ist freigegeben.',
    ]) {
      expect(
        GERMAN_CLEARANCE.some((words) => words.test(sentence)),
        sentence,
      ).toBe(true);
      expect(GERMAN_DENIES.test(sentence), sentence).toBe(false);
    }
  });
});

function sentencesOf(file: string, texts: readonly string[]): { file: string; sentence: string }[] {
  return texts.flatMap((text) =>
    text
      .split(/(?<=[.!?:;])\s+/)
      .map((sentence) => ({ file, sentence: sentence.trim() }))
      .filter(({ sentence }) => sentence !== ''),
  );
}

function wordsIn(part: unknown): string[] {
  return typeof part === 'string' ? [part] : Object.values(part as object).flatMap(wordsIn);
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

/** Everything in a file that can reach a reader: strings, templates and the text between tags. */
function textsOf(file: string): string[] {
  const texts: string[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      texts.push(node.text);
    // Paragraphs are wrapped in the source, and sentences run on around links and figures.
    if (ts.isJsxText(node)) texts.push(node.text.replace(/\s+/g, ' ').trim());
    ts.forEachChild(node, look);
  };
  look(
    ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX),
  );
  return texts;
}
