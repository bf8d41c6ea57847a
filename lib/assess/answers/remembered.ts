/**
 * What was worked out last, by question: asked again from the same, it is given again, as the very same object, so that
 * nobody writes it again.
 */
export class Remembered {
  readonly #known = new Map<string, { from: unknown; made: unknown }>();

  /** @param from all that it is made from: an object that stands for itself, or data that are compared as JSON */
  of<Made>(
    question: string,
    from: unknown,
    work: () => Made,
    compared: 'as JSON' | 'itself' = 'as JSON',
  ): Made {
    const stamp = compared === 'itself' ? from : JSON.stringify(from);
    const known = this.#known.get(question);
    if (known !== undefined && known.from === stamp) return known.made as Made;
    const made = work();
    this.#known.set(question, { from: stamp, made });
    return made;
  }

  /** A document that is made anyway: the one before where it says the same. */
  same<Made>(question: string, made: Made): Made {
    return this.of(question, made, () => made);
  }
}
