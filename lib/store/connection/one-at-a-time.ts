/** A queue of one: whoever asks gets its turn when all before have released theirs. */
export class OneAtATime {
  #last: Promise<void> = Promise.resolve();

  /** @returns the release, to be called exactly once; calling it again does nothing. */
  async turn(): Promise<() => void> {
    const before = this.#last;
    let release: () => void = () => undefined;
    this.#last = new Promise((resolve) => {
      release = resolve;
    });
    await before;
    return release;
  }
}
