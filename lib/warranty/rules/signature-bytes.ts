/** A growing row of bytes; every value says where it ends, so that no two different contents give the same bytes. */
export class ByteWriter {
  private readonly bytes: number[] = [];

  byte(value: number): void {
    this.bytes.push(value & 0xff);
  }

  /** A whole number from 0 to 2^31 - 1, seven bits a byte, lowest first. */
  count(value: number): void {
    if (!Number.isInteger(value) || value < 0 || value > 0x7fff_ffff)
      throw new RangeError(`Not a count that can be signed: ${value}`);
    let rest = value;
    while (rest > 0x7f) {
      this.bytes.push((rest & 0x7f) | 0x80);
      rest >>>= 7;
    }
    this.bytes.push(rest);
  }

  /** Text as UTF-8, its length in bytes first. */
  text(value: string): void {
    const encoded = new TextEncoder().encode(value);
    this.count(encoded.length);
    this.bytes.push(...encoded);
  }

  done(): Uint8Array {
    return Uint8Array.from(this.bytes);
  }
}

/** Reads back what ByteWriter wrote; throws a RangeError where the bytes end too early or are no such row. */
export class ByteReader {
  private at = 0;

  constructor(private readonly bytes: Uint8Array) {}

  byte(): number {
    const value = this.bytes[this.at];
    if (value === undefined) throw new RangeError('The signed bytes end too early');
    this.at += 1;
    return value;
  }

  count(): number {
    let value = 0;
    for (let shift = 0; shift < 35; shift += 7) {
      const next = this.byte();
      value += (next & 0x7f) * 2 ** shift;
      if (next < 0x80) return value;
    }
    throw new RangeError('A count in the signed bytes does not end');
  }

  text(): string {
    const length = this.count();
    if (length > this.bytes.length - this.at) throw new RangeError('The signed bytes end too early');
    const encoded = this.bytes.subarray(this.at, this.at + length);
    this.at += length;
    // A fatal decoder throws a TypeError on bytes that are no UTF-8; one kind of refusal is enough for the caller.
    const decoded = new TextDecoder('utf-8').decode(encoded);
    if (decoded.includes('\uFFFD')) throw new RangeError('A text in the signed bytes is no UTF-8');
    return decoded;
  }
}
