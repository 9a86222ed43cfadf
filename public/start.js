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
  // Unpacked in a worker, so that the page is painted meanwhile and says what it is waiting for.
  const unpacked = async (wasm, packed, unpacker) => {
    document.documentElement.dataset.gettingReady = "";
    const bytes = await inWorker(unpacker, fetched(packed), new URL(wasm, location).href);
    return new Response(bytes, { headers: { "content-type": WASM } });
  };
  const fetched = async (path) => {
    const response = await fetch(path);
    if (!response.ok) throw new Error(`${path}: the host answered ${response.status}`);
    return response.arrayBuffer();
  };
  // The worker fetches the unpacker while the page fetches what is packed.
  const inWorker = (unpacker, fetching, address) =>
    new Promise((resolve, reject) => {
      const worker = new Worker(unpacker);
      worker.onmessage = ({ data }) => (data.bytes ? resolve(data.bytes) : reject(new Error(data.error)));
      worker.onerror = (event) => reject(new Error(event.message || `${unpacker} cannot be started`));
      const keeps = "serviceWorker" in navigator;
      fetching.then((packed) => worker.postMessage({ packed, address, keeps }, [packed])).catch(reject);
    }).finally(() => delete document.documentElement.dataset.gettingReady);

  // `cargo xtask dist` and `cargo xtask serve` write both names; a build for development is not packed.
  const { wasm, packed, unpacker } = document.currentScript.dataset;
  if (packed) self.cartsideWasm = kept(wasm).then((response) => response || unpacked(wasm, packed, unpacker));
  // WebKit reports nothing of a module that ends while it waits for this.
  self.cartsideWasm?.catch(() => window.dispatchEvent(new Event("cartside-panic")));
})();
