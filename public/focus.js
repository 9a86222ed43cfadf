// Keeps the focus in the page where a change takes away what had it: whoever goes by keys goes on from there, and a
// reader says where that is. A page that has just been put up takes the focus by itself.
"use strict";

(() => {
  // What has the focus and all it stands in, from within outwards; whether it was come to by keys.
  let held = [];
  let byKeys = false;
  let waits = false;
  const look = () => {
    waits = false;
    const [lost, ...around] = held;
    const gone = lost && (!lost.isConnected || lost.disabled);
    if (!gone || document.activeElement !== document.body) return;
    const stays = around.find((e) => e.isConnected);
    const first = (css) => stays?.querySelector(css);
    const takes = first("[data-typed]") ?? first("h1, h2, h3") ?? stays;
    if (!takes) return;
    takes.tabIndex = -1;
    // A finger has not asked to be scrolled anywhere.
    takes.focus({ preventScroll: !byKeys });
  };
  addEventListener("focusin", ({ target }) => {
    byKeys = target.matches(":focus-visible");
    held = [];
    for (let at = target; at && at !== document.body; at = at.parentElement) held.push(at);
  });
  // What is disabled loses the focus once the page is painted.
  const soon = () => {
    if (waits || !held.length) return;
    waits = true;
    requestAnimationFrame(() => setTimeout(look));
  };
  new MutationObserver(soon).observe(document, { childList: true, subtree: true, attributeFilter: ["disabled"] });
})();
