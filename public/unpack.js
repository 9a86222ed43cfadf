// Unpacks a file in the `.lzma` format: the algorithm of the LZMA specification in the LZMA SDK (public domain).
// Used by the page at its first start and by the service worker. Written here because the packages that do it weigh
// three to fourteen times as much, more than a slow line should carry for one call.
//
// It needs the unpacked size in the header. Bytes that were damaged give wrong bytes or an error, never an endless
// loop; whoever calls it checks the digest of what comes out.
"use strict";

function unpack(packed) {
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
