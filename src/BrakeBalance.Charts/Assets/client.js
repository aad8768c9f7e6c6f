// In a notebook client whose page may ask its kernel: the controls of figures are answered by the same assembly, there.
globalThis.bbDesk = (() => {
  "use strict";
  const ask = request => new Promise(resolve => {
    const kernel = Jupyter.notebook.kernel, text = JSON.stringify(request).replaceAll('"', '""');
    if (!kernel) { resolve({ fault: "No kernel is connected." }); return; }
    const hear = message => {
      const said = message.content.data?.["text/plain"];
      if (said?.startsWith("{")) resolve(JSON.parse(said));
      else if (message.content.evalue) resolve({ fault: "Run the first cell of this notebook, then move the control again." });
    };
    kernel.execute(`BrakeBalance.Charts.Live.LiveDesk.Reply(@"${text}")`,
      { iopub: { output: hear } }, { store_history: false, silent: false });
  });
  // One question at a time; a newer one takes the place of one that waits.
  const start = () => {
    let asked = false, next = null;
    const go = async () => {
      if (asked || !next) return;
      const { request, resolve } = next;
      [asked, next] = [true, null];
      resolve(await ask(request));
      asked = false;
      go();
    };
    return { ask: (name, request) => new Promise(resolve => {
      next?.resolve(null);
      next = { request, resolve };
      go();
    }) };
  };
  const bound = new WeakSet(), bind = () => document.querySelectorAll(".bb-explorable:has(> .bb-ask)").forEach(root => {
    if (bound.has(root)) return;
    root.parentElement.querySelectorAll(".bb-explorable").forEach(one => bound.add(one));
    dispatchEvent(new CustomEvent("bb-shown", { detail: root.parentElement }));
  });
  setTimeout(() => {
    bind();
    new MutationObserver(bind).observe(document.body, { childList: true, subtree: true });
  });
  return { start, kept: () => null };
})();
