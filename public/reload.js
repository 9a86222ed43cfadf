// Shows a plain panel when the app has stopped, so that nobody taps on a dead page. Needs no wasm.
"use strict";

(() => {
  const show = () => {
    const panel = document.getElementById("reload-panel");
    if (!panel || !panel.hidden) return;
    panel.hidden = false;
    panel.querySelector("button").focus();
  };
  // Where a newer build waits it takes over now: this one may have stopped because it is damaged.
  const reload = async () => {
    const workers = navigator.serviceWorker;
    const waiting = (await workers?.getRegistration())?.waiting;
    if (!waiting) return location.reload();
    workers.addEventListener("controllerchange", () => location.reload());
    waiting.postMessage({ type: "take-over" });
    // One that does not come is not waited for.
    setTimeout(() => location.reload(), 3000);
  };
  const start = () => {
    document.querySelector("#reload-panel button").addEventListener("click", reload);
  };
  // Browsers report an observer that was put off to the next frame as an error; nothing has stopped.
  const isHarmless = (event) => String(event.message).startsWith("ResizeObserver loop");
  window.addEventListener("error", (event) => isHarmless(event) || show());
  // A script that could not be fetched tells its own element alone.
  window.addEventListener("error", (event) => event.target.tagName === "SCRIPT" && show(), true);
  window.addEventListener("unhandledrejection", show);
  window.addEventListener("cartside-panic", show);
  document.addEventListener("DOMContentLoaded", start);
})();
