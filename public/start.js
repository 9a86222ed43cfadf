// Begins to fetch the app's wasm as soon as the page is read, and leaves the promise of it in `cartsideWasm`. A host
// holds it packed; the service worker keeps it unpacked, so that only the first start has to unpack.
"use strict";

(() => {
  const WASM = "application/wasm";

  const kept = async (path) => {
    if (!navigator.serviceWorker?.controller) return null;
    const response = await fetch(path);
    // A worker that was robbed of its files asks the host, which may answer with a page of its own.
    return response.ok && response.headers.get("content-type") === WASM ? response : null;
  };
  const unpacked = async (path) => {
    const response = await fetch(path);
    if (!response.ok) throw new Error(`${path}: the host answered ${response.status}`);
    const bytes = unpack(new Uint8Array(await response.arrayBuffer()));
    return new Response(bytes, { headers: { "content-type": WASM } });
  };

  // `cargo xtask dist` and `cargo xtask serve` write both names; a build for development is not packed.
  const { wasm, packed } = document.currentScript.dataset;
  if (packed) self.cartsideWasm = kept(wasm).then((response) => response || unpacked(packed));
  // WebKit reports nothing of a module that ends while it waits for this.
  self.cartsideWasm?.catch(() => window.dispatchEvent(new Event("cartside-panic")));
})();
