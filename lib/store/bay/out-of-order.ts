/** An entry that does not follow on the last one of its device. It and all after it were not kept. */
export class OutOfOrder extends Error {
  /**
   * @param device its name.
   * @param last the last entry of this device that is kept; 0 where there is none.
   * @param taken true where another entry stands at this place already: two devices go by one name.
   */
  constructor(
    readonly device: string,
    readonly sequence: number,
    readonly last: number,
    readonly taken: boolean,
  ) {
    super(
      taken
        ? `Entry ${sequence} of device ${device} is another one already: two devices go by this name. Give this one a new name and send the entry as its first.`
        : `Entry ${sequence} of device ${device} came before entry ${last + 1}. Send the entries in their order, from ${last + 1} on.`,
    );
    this.name = 'OutOfOrder';
  }
}
