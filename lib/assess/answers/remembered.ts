/**
 * What was worked out last, by question: asked again from the same, it is given again, as the very same object, so that
 * nobody writes it again.
 */
export class Remembered {
  readonly #known = new Map<string, { from: readonly unknown[]; made: unknown }>();

  /** @param from all that it is made from, told apart as objects, not by what they hold */
  of<Made>(question: string, from: readonly unknown[], work: () => Made): Made {
    const known = this.#known.get(question);
    if (known !== undefined && from.every((part, i) => part === known.from[i])) return known.made as Made;
    const made = work();
    this.#known.set(question, { from, made });
    return made;
  }

  /** @param from plain data, told apart by what they hold */
  from<Made>(question: string, from: unknown, work: () => Made): Made {
    return this.of(question, [JSON.stringify(from)], work);
  }

  /** A document that is made anyway: the one before where it says the same, which need not be asked of the very same object. */
  same<Made>(question: string, made: Made): Made {
    return this.of(`${question}, as made`, [made], () => this.from(question, made, () => made));
  }
}
