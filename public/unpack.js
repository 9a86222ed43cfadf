// Unpacks the app's wasm: in a worker of the page at the first start, in the service worker for each build that comes
// later. The unpacker is a wasm of its own (`xtask/unpacker`); `cargo xtask dist` writes its name and digest into this
// script.
"use strict";

const UNPACKER = "UNPACKER_NAME";

// The wasm that these bytes were packed from; damaged bytes give an error, or other bytes.
async function unpack(packed, unpacker) {
  const { instance } = await WebAssembly.instantiate(unpacker);
  const { memory, take, unpack, given } = instance.exports;
  const place = take(packed.length) >>> 0;
  new Uint8Array(memory.buffer, place, packed.length).set(packed);
  const length = unpack() >>> 0;
  if (!length) throw new RangeError("the packed wasm is damaged");
  return new Uint8Array(memory.buffer, given() >>> 0, length).slice();
}

// The name of the cache in which the page hands what it has unpacked over to the service worker, which takes it if its
// digest is right and then needs to fetch and unpack nothing.
function handedName(folder) {
  return `cartside-${folder}-handed`;
}

async function handOver(address, bytes) {
  try {
    const cache = await caches.open(handedName(new URL(".", address).pathname));
    await cache.put(address, new Response(bytes, { headers: { "content-type": "application/wasm" } }));
  } catch {
    // A browser that keeps nothing for this page has no service worker that asks for it.
  }
}

// In a worker of the page.
if (!("registration" in self)) {
  const unpacker = fetch(UNPACKER, { integrity: "UNPACKER_DIGEST" }).then((response) => response.arrayBuffer());
  // If it fails, that is told below, where it is waited for.
  unpacker.catch(() => {});
  self.onmessage = async ({ data: { packed, address, keeps } }) => {
    try {
      const bytes = await unpack(new Uint8Array(packed), await unpacker);
      if (keeps) await handOver(address, bytes);
      self.postMessage({ bytes }, [bytes.buffer]);
    } catch (error) {
      self.postMessage({ error: String(error) });
    }
  };
}
