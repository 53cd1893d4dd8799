import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { entryId, type EntryId } from './brand.ts';

/** SHA-256 of bytes that come piece by piece, for files that are larger than memory should hold. */
export interface FileHash {
  readonly update: (bytes: Uint8Array) => void;
  /** To be asked once, after the last piece. */
  readonly digest: () => EntryId;
}

export function fileHash(): FileHash {
  const hash = sha256.create();
  return {
    update: (bytes) => {
      hash.update(bytes);
    },
    digest: () => entryId(bytesToHex(hash.digest())),
  };
}
