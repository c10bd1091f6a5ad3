import { constants, deflateRawSync } from 'node:zlib';

const STRETCH_BYTES = 16 * 1024 * 1024;

/**
 * A zip with one deflated entry of spaces, made without ever holding them: a deflated stretch ended by a full flush stands
 * by itself (RFC 1951; zlib manual, Z_FULL_FLUSH), so it can be repeated.
 *
 * @param stretches how many stretches of 16 MB the entry inflates to
 * @param claimedBytes uncompressed size that the headers state
 */
export function zipOfSpaces(name: string, stretches: number, claimedBytes: number): Uint8Array {
  const spaces = Buffer.alloc(STRETCH_BYTES, ' ');
  const stretch = deflateRawSync(spaces, { level: 9, finishFlush: constants.Z_FULL_FLUSH });
  const end = deflateRawSync(Buffer.alloc(0));
  const packed = Buffer.concat([...Array.from({ length: stretches }, () => stretch), end]);
  return zipOf(Buffer.from(name), packed, claimedBytes);
}

/** ZIP application note (PKWARE), 4.3.7 local header, 4.3.12 central header, 4.3.16 end; the checksum is left at 0. */
function zipOf(name: Buffer, packed: Buffer, claimedBytes: number): Uint8Array {
  const shared = Buffer.alloc(26);
  shared.writeUInt16LE(20, 0);
  shared.writeUInt16LE(8, 4);
  shared.writeUInt32LE(packed.length, 14);
  shared.writeUInt32LE(claimedBytes, 18);
  shared.writeUInt16LE(name.length, 22);
  const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), shared, name, packed]);
  const central = Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), shared, Buffer.alloc(14), name]);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(local.length, 16);
  return Buffer.concat([local, central, end]);
}
