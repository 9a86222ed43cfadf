// Shows a plain panel when the app has stopped, so that nobody taps on a dead page. Needs no wasm.
"use strict";

(() => {
  const show = () => {
    const panel = document.getElementById("reload-panel");
    if (!panel || !panel.hidden) return;
    panel.hidden = false;
    panel.querySelector("button").focus();
  };
  const start = () => {
    document.querySelector("#reload-panel button").addEventListener("click", () => location.reload());
  };
  // Browsers report an observer that was put off to the next frame as an error; nothing has stopped.
  const isHarmless = (event) => String(event.message).startsWith("ResizeObserver loop");
  window.addEventListener("error", (event) => isHarmless(event) || show());
  window.addEventListener("unhandledrejection", show);
  window.addEventListener("cartside-panic", show);
  document.addEventListener("DOMContentLoaded", start);
})();
