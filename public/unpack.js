// Unpacks the app's wasm as `cargo xtask dist` packed it: LZMA, and within it the code parted into streams by kind.
// Used by the page at its first start and by the service worker. Written here because the packages that undo LZMA
// weigh three to fourteen times as much as this whole file, more than a slow line should carry for one call.
//
// Bytes that were damaged give wrong bytes or an error, never an endless loop; whoever calls it checks the digest of
// what comes out.
"use strict";

function unpack(packed) {
  return join(expand(packed));
}

// A file in the `.lzma` format, by the algorithm of the LZMA specification in the LZMA SDK (public domain). It needs
// the size in the header.
function expand(packed) {
  // The header: one byte for three settings, four for the dictionary (all is kept here), eight for the size.
  const literalContext = packed[0] % 9;
  const literalPosition = Math.trunc(packed[0] / 9) % 5;
  const literalMask = (1 << literalPosition) - 1;
  const positionMask = (1 << Math.trunc(packed[0] / 45)) - 1;
  const size = new DataView(packed.buffer, packed.byteOffset).getUint32(5, true);
  const out = new Uint8Array(size);

  // Every chance that a bit is 0, in 1/2048, in one table; these are the places where each kind begins.
  const IS_MATCH = 0;
  const IS_REPEAT = 192;
  const IS_OTHER_THAN_LAST = 204;
  const IS_OTHER_THAN_SECOND = 216;
  const IS_OTHER_THAN_THIRD = 228;
  const IS_LONGER_THAN_ONE = 240;
  const SLOT = 432;
  const NEAR = 688;
  const ALIGN = 802;
  const LENGTH = 818;
  const REPEAT_LENGTH = 1332;
  const LITERAL = 1846;
  const chances = new Uint16Array(LITERAL + (768 << (literalContext + literalPosition))).fill(1024);

  let range = 0xffffffff;
  let code = 0;
  // The first byte of the coded bits is always 0.
  let at = 14;
  for (let i = 0; i < 4; i++) nextByte();

  function nextByte() {
    code = ((code << 8) | packed[at++]) >>> 0;
  }

  function refill() {
    if (range < 0x1000000) {
      range = (range << 8) >>> 0;
      nextByte();
    }
  }

  function bit(place) {
    const chance = chances[place];
    const bound = (range >>> 11) * chance;
    const one = code >= bound;
    if (one) {
      range -= bound;
      code -= bound;
      chances[place] = chance - (chance >> 5);
    } else {
      range = bound;
      chances[place] = chance + ((2048 - chance) >> 5);
    }
    refill();
    return one ? 1 : 0;
  }

  function evenBits(count) {
    let value = 0;
    while (count--) {
      range >>>= 1;
      const one = code >= range;
      if (one) code -= range;
      value = (value << 1) | (one ? 1 : 0);
      refill();
    }
    return value;
  }

  function highFirst(place, count) {
    let node = 1;
    for (let i = 0; i < count; i++) node = (node << 1) | bit(place + node);
    return node - (1 << count);
  }

  function lowFirst(place, count) {
    let node = 1;
    let value = 0;
    for (let i = 0; i < count; i++) {
      const one = bit(place + node);
      node = (node << 1) | one;
      value |= one << i;
    }
    return value;
  }

  function length(place, position) {
    if (!bit(place)) return 2 + highFirst(place + 2 + (position << 3), 3);
    if (!bit(place + 1)) return 10 + highFirst(place + 130 + (position << 3), 3);
    return 18 + highFirst(place + 258, 8);
  }

  let written = 0;
  let state = 0;
  // The last four distances, the latest first, each less one.
  let [first, second, third, fourth] = [0, 0, 0, 0];

  function literal() {
    const before = written ? out[written - 1] : 0;
    const context = ((written & literalMask) << literalContext) + (before >> (8 - literalContext));
    const place = LITERAL + 768 * context;
    let node = 1;
    if (state >= 7) {
      let matched = out[written - first - 1];
      while (node < 256) {
        const expected = (matched >> 7) & 1;
        matched <<= 1;
        const one = bit(place + ((1 + expected) << 8) + node);
        node = (node << 1) | one;
        if (one !== expected) break;
      }
    }
    while (node < 256) node = (node << 1) | bit(place + node);
    out[written++] = node;
    state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
  }

  function distance(count) {
    const slot = highFirst(SLOT + (Math.min(count - 2, 3) << 6), 6);
    if (slot < 4) return slot;
    const low = (slot >> 1) - 1;
    const from = (2 | (slot & 1)) << low;
    if (slot < 14) return from + lowFirst(NEAR + from - slot, low);
    return from + (evenBits(low - 4) << 4) + lowFirst(ALIGN, 4);
  }

  // Takes the second, third or fourth distance up to the front.
  function takeUp() {
    if (!bit(IS_OTHER_THAN_SECOND + state)) [first, second] = [second, first];
    else if (!bit(IS_OTHER_THAN_THIRD + state)) [first, second, third] = [third, first, second];
    else [first, second, third, fourth] = [fourth, first, second, third];
  }

  function copy(count) {
    const end = Math.min(written + count, size);
    for (; written < end; written++) out[written] = out[written - first - 1];
  }

  while (written < size) {
    const position = written & positionMask;
    if (!bit(IS_MATCH + (state << 4) + position)) {
      literal();
    } else if (!bit(IS_REPEAT + state)) {
      [second, third, fourth] = [first, second, third];
      const count = length(LENGTH, position);
      state = state < 7 ? 7 : 10;
      first = distance(count);
      copy(count);
    } else {
      // Read in this order: whether it is the latest distance decides whether one byte alone is possible.
      const latest = !bit(IS_OTHER_THAN_LAST + state);
      if (latest && !bit(IS_LONGER_THAN_ONE + (state << 4) + position)) {
        state = state < 7 ? 9 : 11;
        copy(1);
      } else {
        if (!latest) takeUp();
        const count = length(REPEAT_LENGTH, position);
        state = state < 7 ? 8 : 11;
        copy(count);
      }
    }
  }
  return out;
}

// The wasm of its parted code; how it is parted is told in `xtask/src/streams.rs`.
function join(parted) {
  const view = new DataView(parted.buffer, parted.byteOffset);
  const length = (piece) => view.getUint32(4 * piece, true);
  const KINDS = 16;
  const [OP, DECLARED, BLOCK, BRANCH, TABLE, GET, SET, GLOBAL] = [0, 1, 2, 3, 4, 5, 6, 7];
  const [ALIGNMENT, LOAD, STORE, INT32, INT64, FLOAT, INDIRECT, OTHER] = [8, 9, 10, 11, 12, 13, 14, 15];
  const NATURAL = "23230011001122232301012";

  let start = 4 * (3 + KINDS);
  const piece = (number) => parted.subarray(start, (start += length(number)));
  const before = piece(1);
  const after = piece(2);
  const streams = Array.from({ length: KINDS }, (_, kind) => piece(3 + kind));
  const places = new Uint32Array(KINDS);
  // The content of the code section is shorter than the whole wasm.
  const out = new Uint8Array(length(0));
  let written = 0;

  function byte(kind, change = 0) {
    const place = places[kind]++;
    if (place >= streams[kind].length) throw new RangeError("a stream of the wasm's code is cut short");
    const found = streams[kind][place];
    out[written++] = found ^ change;
    return found;
  }

  function number(kind) {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const found = byte(kind);
      value |= (found & 127) << shift;
      if (found < 128) return value >>> 0;
    }
  }

  function numbers(kind, count) {
    while (count--) number(kind);
  }

  // The kind of the one number that follows an instruction.
  const follows = new Uint8Array(256);
  const one = (kind, ...instructions) => instructions.forEach((instruction) => (follows[instruction] = kind));
  one(BLOCK, 2, 3, 4);
  one(BRANCH, 12, 13);
  one(GET, 32);
  one(SET, 33, 34);
  one(GLOBAL, 35, 36);
  one(INT32, 65);
  one(INT64, 66);
  one(OTHER, 37, 38, 63, 64, 208, 210);

  function operands(instruction) {
    if (follows[instruction]) number(follows[instruction]);
    else if (instruction >= 40 && instruction <= 62) {
      byte(ALIGNMENT, +NATURAL[instruction - 40]);
      number(instruction < 54 ? LOAD : STORE);
    } else if (instruction === 16) number(OP);
    else if (instruction === 17) numbers(INDIRECT, 2);
    else if (instruction === 14) numbers(TABLE, number(TABLE) + 1);
    else if (instruction === 28) numbers(OTHER, number(OTHER));
    else if (instruction === 67) for (let i = 0; i < 4; i++) byte(FLOAT);
    else if (instruction === 68) for (let i = 0; i < 8; i++) byte(FLOAT);
    else if (instruction === 252) {
      const further = number(OTHER);
      numbers(OTHER, further < 8 ? 0 : further < 15 && further % 2 === 0 ? 2 : 1);
    }
  }

  function body() {
    for (let groups = number(DECLARED); groups > 0; groups--) {
      number(DECLARED);
      byte(DECLARED);
    }
    for (let depth = 1; depth > 0; ) {
      const instruction = byte(OP);
      if (instruction === 11) depth--;
      if (instruction >= 2 && instruction <= 4) depth++;
      operands(instruction);
    }
  }

  function leb(value) {
    const bytes = [];
    for (; value > 127; value >>>= 7) bytes.push((value & 127) | 128);
    return [...bytes, value];
  }

  for (let bodies = number(DECLARED); bodies > 0; bodies--) {
    const from = written;
    body();
    // Its size comes first, and is known only now.
    const size = leb(written - from);
    out.copyWithin(from + size.length, from, written);
    out.set(size, from);
    written += size.length;
  }
  const wasm = new Uint8Array(length(0));
  let at = 0;
  for (const bytes of [before, [10, ...leb(written)], out.subarray(0, written), after]) {
    wasm.set(bytes, at);
    at += bytes.length;
  }
  return wasm;
}
