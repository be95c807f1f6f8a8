/** A zip that is written piece by piece and ends in its seal. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { BlobOfPieces } from './blob-of-pieces';
import { mostArchiveBytes } from './limits';
import { sealText } from './manifest';
import { refuse } from './refusal';

/** A file that is being written into the archive: its bytes so far and, once it is ended, their hash. */
export type Part = {
  readonly add: (bytes: Uint8Array) => void;
  readonly end: () => { readonly bytes: number; readonly sha256: string };
};

/** A zip tells no time before 1980 or after 2099; the manifest tells the right one. */
const tellable = (madeAt: string): string => {
  const year = new Date(madeAt).getUTCFullYear();
  return year > 1980 && year < 2099 ? madeAt : '1981-01-01T00:00:00.000Z';
};

/** The seal goes in as the comment of the archive: its length stands in the last two bytes before it. */
function sealed(end: Uint8Array, seal: Uint8Array): void {
  new DataView(end.buffer, end.byteOffset).setUint16(end.length - 2, seal.length, true);
}

const sealBytes = (hash: string): Uint8Array => utf8ToBytes(sealText(hash));

export class Archive {
  readonly #blob = new BlobOfPieces();
  readonly #hash = sha256.create();
  readonly #zip: Zip;

  constructor(readonly madeAt: string) {
    this.#zip = new Zip((error, bytes, last) => {
      if (error) throw error;
      if (last) sealed(bytes, sealBytes('0'.repeat(64)));
      this.#hash.update(bytes);
      this.#blob.add(bytes);
      if (this.#blob.size > mostArchiveBytes - 1024)
        refuse({ code: 'too-large', what: 'archive', most: mostArchiveBytes });
    });
  }

  /** The next file; the one before it has ended. */
  #begun<F extends ZipDeflate | ZipPassThrough>(file: F): F {
    file.mtime = tellable(this.madeAt);
    this.#zip.add(file);
    return file;
  }

  /** One that is written piece by piece, and packed. */
  part(name: string): Part {
    const file = this.#begun(new ZipDeflate(name));
    const hash = sha256.create();
    let count = 0;
    return {
      add: (bytes) => {
        hash.update(bytes);
        count += bytes.length;
        file.push(bytes);
      },
      end: () => {
        file.push(new Uint8Array(0), true);
        return { bytes: count, sha256: bytesToHex(hash.digest()) };
      },
    };
  }

  whole(name: string, bytes: Uint8Array): ReturnType<Part['end']> {
    const part = this.part(name);
    part.add(bytes);
    return part.end();
  }

  /** A picture or a PDF, whose hash is known: it is packed already, and laid in as it is. */
  laid(name: string, bytes: Uint8Array): void {
    this.#begun(new ZipPassThrough(name)).push(bytes, true);
  }

  end(): Blob {
    this.#zip.end();
    this.#blob.add(sealBytes(bytesToHex(this.#hash.digest())));
    return this.#blob.blob('application/zip');
  }
}
