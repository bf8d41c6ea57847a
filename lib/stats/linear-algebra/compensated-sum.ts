/**
 * A running sum that keeps the digits which plain addition drops, so that the order of the terms does not
 * matter to the last digit or two.
 *
 * Source: Neumaier (1974), Zeitschrift für Angewandte Mathematik und Mechanik 54, 39–51.
 */
export class CompensatedSum {
  private sum = 0;
  private lost = 0;

  add(term: number): void {
    const next = this.sum + term;
    this.lost += Math.abs(this.sum) >= Math.abs(term) ? this.sum - next + term : term - next + this.sum;
    this.sum = next;
  }

  get value(): number {
    return this.sum + this.lost;
  }
}
