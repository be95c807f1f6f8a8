/** Gathers pieces into a Blob that may be larger than memory. */

/** Memory holds this much of it; the rest goes to the browser, which lays it on the disk. */
const heldBytes = 8 * 1024 * 1024;

export class BlobOfPieces {
  readonly #put: Blob[] = [];
  #held: Uint8Array<ArrayBuffer>[] = [];
  #heldBytes = 0;
  size = 0;

  /** Takes a copy: who hands out pieces may use their buffer again. */
  add(piece: Uint8Array): void {
    this.#held.push(new Uint8Array(piece));
    this.#heldBytes += piece.length;
    this.size += piece.length;
    if (this.#heldBytes >= heldBytes) this.#putDown();
  }

  #putDown(): void {
    this.#put.push(new Blob(this.#held));
    this.#held = [];
    this.#heldBytes = 0;
  }

  blob(type: string): Blob {
    this.#putDown();
    return new Blob(this.#put, { type });
  }
}
