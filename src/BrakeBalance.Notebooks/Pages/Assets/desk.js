// Starts the calculation assembly in a worker and asks it. A newer question of the same name takes the place of one that still waits.
const bbDesk = (() => {
  "use strict";
  const worth = new Uint8Array(128);
  [..."__BB_LETTERS__"].forEach((letter, i) => { worth[letter.charCodeAt(0)] = i; });
  // "length text": five letters hold four bytes.
  const bytes = written => {
    const gap = written.indexOf(" "), length = Number(written.slice(0, gap)), all = new DataView(new ArrayBuffer(length + 3));
    for (let i = gap + 1, at = 0; at < length; i += 5, at += 4) {
      let value = 0;
      for (let k = 0; k < 5; k++) value = value * 85 + worth[written.charCodeAt(i + k)];
      all.setUint32(at, value);
    }
    return new Uint8Array(all.buffer, 0, length);
  };

  // The parts come one by one, each handed on to the workers at once: from the end of the page itself, while it is still being read, or
  // from a file that all pages share, which is asked for when a page first needs it. Both assemblies run on one runtime.
  const kits = {
    "BrakeBalance.Live": { files: ["__BB_SHARED__"], parts: new Map(), workers: new Set() },
    "BrakeBalance.Cells": { files: ["__BB_SHARED__", "__BB_CELLS__"], parts: new Map(), workers: new Set() },
  };
  const take = ({ parts, workers }, name, packed) => {
    parts.set(name, packed);
    workers.forEach(worker => worker.postMessage({ name, packed }));
  };
  const part = (name, written, kit = "BrakeBalance.Live") => {
    const packed = bytes(written);
    take(kits[kit], name, packed);
    if (/^dotnet\.(native|runtime)/.test(name)) take(kits["BrakeBalance.Cells"], name, packed);
  };
  const partHere = element => part(element.dataset.file, element.textContent);
  const fetched = new Map();
  const fetchShared = file => {
    if (!fetched.has(file)) fetched.set(file, new Promise(resolve => {
      const script = document.createElement("script");
      script.src = file;
      script.onerror = () => resolve({ fault: `the file ${file} is not beside this page` });
      document.head.append(script);
    }));
    return fetched.get(file);
  };

  const start = (name = "BrakeBalance.Live") => {
    const { files, parts, workers } = kits[name], source = JSON.parse(document.getElementById("live-worker").textContent);
    const worker = new Worker(URL.createObjectURL(new Blob([source], { type: "text/javascript" })));
    workers.add(worker);
    parts.forEach((packed, part) => worker.postMessage({ name: part, packed }));
    const waiting = new Map();
    let asked = null, serial = 0;
    const next = () => {
      if (asked || waiting.size === 0) return;
      const [name, first] = waiting.entries().next().value;
      waiting.delete(name);
      asked = { ...first, name, id: ++serial };
      worker.postMessage({ id: asked.id, start: first.start, request: first.request, text: first.text });
    };
    worker.addEventListener("message", event => {
      if (!asked || event.data.id !== asked.id) return;
      const { resolve } = asked;
      asked = null;
      resolve(JSON.parse(event.data.reply));
      next();
    });
    worker.addEventListener("error", event => {
      event.preventDefault?.();
      asked?.resolve({ fault: event.message || "the calculation stopped" });
      asked = null;
      next();
    });
    const put = (name, entry) => new Promise(resolve => {
      waiting.get(name)?.resolve(null);
      waiting.set(name, { ...entry, resolve });
      next();
    });
    const ready = Promise.race([put("start", { start: name }), ...files.filter(file => file).map(fetchShared)]);
    return {
      ready,
      // Whether a question of this name would not wait for another one.
      freeFor: name => !asked && waiting.size === 0 || asked?.name === name,
      // A vehicle file goes beside the question: written as JSON it would have to be read as JSON twice.
      ask: async (name, { text, ...request }) => {
        const began = await ready;
        return began?.fault ? began : put(name, { request: JSON.stringify(request), text });
      },
      end: () => { worker.terminate(); workers.delete(worker); asked?.resolve(null); waiting.forEach(entry => entry.resolve(null)); },
    };
  };
  // The first desk, which may have been started while the page was read.
  let early = null;
  const begin = () => { early = start(); };
  const first = () => { const one = early ?? start(); early = null; return one; };
  // The set-ups that a reader keeps on this device; null for none, or where storage is refused.
  const KEPT = "bb-cars";
  const kept = () => {
    try {
      const found = JSON.parse(localStorage.getItem(KEPT));
      return Array.isArray(found?.cars) && found.cars.length > 0 && found.cars.every(one => typeof one.text === "string") ? found : null;
    } catch { return null; }
  };
  const keep = found => { try { localStorage.setItem(KEPT, JSON.stringify(found)); } catch { /* they last as long as the page */ } };
  const forget = () => { try { localStorage.removeItem(KEPT); } catch { /* nothing was kept */ } };
  return { start, begin, first, part, partHere, kits, kept, keep, forget };
})();
