// Lets a reader edit the C# cells of a page and run them. The compiler starts, in a worker, when a cell is first edited.
(() => {
  "use strict";
  const book = JSON.parse(document.getElementById("bb-notebook").textContent), KEPT = "bb-cells " + book.name;
  const make = (tag, settings = {}, ...children) => {
    const element = Object.assign(document.createElement(tag), settings);
    element.append(...children);
    return element;
  };
  const button = (text, act, name) => {
    const made = make("button", { type: "button", textContent: text });
    if (name) made.setAttribute("aria-label", name);
    made.addEventListener("click", act);
    return made;
  };
  const status = () => {
    const made = make("span");
    made.setAttribute("role", "status");
    return made;
  };
  const first = document.getElementById("first-screen"), sections = [...document.querySelectorAll("section.bb-cell")];
  const text = cell => [cell.source].flat().join(""), isCode = cell => cell.cell_type === "code";
  const cells = book.notebook.cells.filter(isCode).map((cell, at) => {
    const section = sections[at], opens = first && cell.metadata.tags?.includes("first-screen");
    return { id: cell.id, at, section, details: section.querySelector(":scope > .bb-code"), own: text(cell), source: text(cell),
      place: opens ? first : section, ran: null, failed: false };
  });
  const sources = () => cells.map(cell => cell.source);
  const edited = () => cells.filter(cell => cell.source !== cell.own);

  // Edits stay on this device, each beside the text that it replaces: another text of the page forgets it.
  const keep = () => {
    const kept = Object.fromEntries(edited().map(cell => [cell.id, { own: cell.own, source: cell.source }]));
    try {
      if (edited().length > 0) localStorage.setItem(KEPT, JSON.stringify(kept)); else localStorage.removeItem(KEPT);
    } catch { /* they last as long as the page */ }
    count.textContent = edited().length === 0 ? "No cell is edited." : `Edited: ${edited().length} of ${cells.length} cells.`;
  };

  // One worker. It is asked one thing after the other; to stop means to end it and to begin another.
  let desk = null, begun = null, serial = 0;
  const begin = () => {
    if (begun) return begun;
    const mine = desk = bbDesk.start("BrakeBalance.Cells");
    return begun = (async () => {
      const fault = (await mine.ready)?.fault;
      if (fault) { begun = null; return { fault }; }
      const assemblies = [...bbDesk.kits["BrakeBalance.Cells"].parts.keys()]
        .filter(name => name.endsWith(".dll") && !/CodeAnalysis|\.Cells\./.test(name)).map(name => name.slice(0, -4));
      const reply = await mine.ask("begin", { begin: { assemblies, files: { ...bbDesk.data, ...book.files }, variables: book.variables } });
      const own = cells.map(cell => cell.own), plan = reply?.fault ? null : await mine.ask("own", { needs: own });
      ownKeys ??= plan && keys(plan.needs, own);
      return reply;
    })();
  };
  const ask = async request => {
    const fault = (await begin())?.fault;
    return fault ? { fault } : desk.ask(String(++serial), request);
  };

  // After a pause in typing the compiler, once it is there, says what it would refuse. Nothing runs.
  const follow = cell => cell.marks.scrollTo(cell.area.scrollLeft, cell.area.scrollTop);
  const refused = (cell, errors) => {
    const { source } = cell, marked = [];
    let end = 0;
    for (const { from, to } of errors) {
      const at = Math.min(from, source.length - 1);
      if (at < end) continue;
      marked.push(source.slice(end, at), make("mark", { textContent: source.slice(at, end = Math.max(to, at + 1)) }));
    }
    cell.marks.replaceChildren(...marked, source.slice(end) + "\n");
    follow(cell);
    cell.errors.replaceChildren(...errors.map(({ line, message }) => make("p", { textContent: `Line ${line}: ${message}` })));
    cell.area.setAttribute("aria-invalid", String(errors.length > 0));
  };
  const check = async cell => {
    if (!begun || (await begun)?.fault) return;
    const { source } = cell, reply = await desk?.ask("check", { check: sources(), cell: cell.at });
    if (reply?.errors && source === cell.source) refused(cell, reply.errors);
  };
  const typed = cell => {
    if (cell.offer) narrow(cell);
    cell.marks.replaceChildren();
    clearTimeout(cell.pause);
    cell.pause = setTimeout(check, 400, cell);
  };

  // The names that fit at the caret, when asked for: the list narrows with what is typed. What the chosen one is stands under it, and
  // stays when it has been put in.
  const LONGEST = 200;
  let summaries = null;
  const summary = async id => {
    summaries ??= (async () => {
      const packed = bbDesk.kits["BrakeBalance.Cells"].parts.get("summaries");
      const text = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
      return new Map(text.split("\n").map(line => line.split("\t")));
    })();
    return (await summaries).get(id);
  };
  const close = (cell, told = false) => {
    cell.offer = null;
    cell.list.hidden = true;
    if (!told) { cell.explaining = null; cell.told.replaceChildren(); }
    cell.area.removeAttribute("aria-activedescendant");
  };
  const choose = async (cell, at) => {
    const { offer } = cell, options = [...cell.list.children];
    offer.at = (at + options.length) % options.length;
    options.forEach((option, i) => option.setAttribute("aria-selected", String(i === offer.at)));
    options[offer.at].scrollIntoView({ block: "nearest" });
    cell.area.setAttribute("aria-activedescendant", options[offer.at].id);
    const name = offer.fits[offer.at][0], mine = cell.explaining = {}, reply = await desk?.ask("explain", { explain: name });
    if (!reply?.explained || cell.explaining !== mine) return;
    const told = (await Promise.all(reply.explained.map(one => summary(one.documented)))).find(one => one);
    cell.told.replaceChildren(...reply.explained.slice(0, 3).map(one => make("code", { textContent: one.declared })),
      reply.explained.length > 3 ? make("p", { textContent: `and ${reply.explained.length - 3} more of this name` }) : "",
      told ? make("p", { textContent: told }) : "");
  };
  const narrow = cell => {
    const { from, names } = cell.offer, caret = cell.area.selectionStart, word = cell.source.slice(from, caret).toLowerCase();
    const found = names.map(([name, kind]) => [name, kind, name.toLowerCase().indexOf(word)]).filter(one => one[2] >= 0);
    const fits = [...found.filter(one => one[2] === 0), ...found.filter(one => one[2] > 0)].slice(0, LONGEST);
    if (caret < from || !/^[\w@]*$/.test(word) || fits.length === 0) {
      if (fits.length === 0) say(cell, "No name fits here.");
      close(cell);
      return;
    }
    cell.offer.fits = fits;
    cell.list.replaceChildren(...fits.map(([name, kind], i) => {
      const option = make("li", { id: `${cell.list.id}-${i}` }, name, make("span", { textContent: kind }));
      option.setAttribute("role", "option");
      option.addEventListener("click", () => accept(cell, i));
      return option;
    }));
    cell.list.hidden = false;
    say(cell, found.length > LONGEST ? `${LONGEST} of ${found.length} names: type on.` : `Names that fit: ${fits.length}.`);
    choose(cell, 0);
  };
  const suggest = async cell => {
    cell.area.focus();
    close(cell);
    say(cell, begun ? "Looking for names …" : "Starting the compiler …");
    const { source } = cell, place = cell.area.selectionStart;
    const fault = (await begin())?.fault, reply = fault ? { fault } : await desk?.ask("names", { names: sources(), cell: cell.at, place });
    if (reply?.fault) say(cell, reply.fault);
    if (!reply?.names || source !== cell.source) return;
    cell.offer = reply;
    narrow(cell);
  };
  const accept = (cell, at) => {
    const { from, fits } = cell.offer, [name] = fits[at];
    choose(cell, at);
    close(cell, true);
    say(cell, "");
    cell.area.setSelectionRange(from, cell.area.selectionStart);
    // It can be undone like what is typed.
    if (!document.execCommand("insertText", false, name)) {
      cell.area.setRangeText(name, from, cell.area.selectionEnd, "end");
      cell.area.dispatchEvent(new Event("input"));
    }
  };
  const listKeys = { ArrowDown: cell => choose(cell, cell.offer.at + 1), ArrowUp: cell => choose(cell, cell.offer.at - 1),
    Enter: cell => accept(cell, cell.offer.at), Escape: cell => close(cell) };

  // What a result rests on: the texts of the cells that it needs, and its own.
  let ownKeys = null;
  const keys = (needs, texts) => needs.map((above, at) => JSON.stringify([...above, at].map(i => texts[i])));
  const say = (cell, words) => { const said = cell.said || cell.noteSaid; if (said) said.textContent = words; };

  // Scripts of an output cannot run by this page's policy; what could lead away from the page is taken out.
  const clean = html => {
    const box = document.createElement("template");
    box.innerHTML = html;
    box.content.querySelectorAll("meta, base, link, iframe, object, embed, script:not([type='application/json'])")
      .forEach(one => one.remove());
    return box.content;
  };
  // The page's own outputs are put aside, not thrown away: to reset is to put them back.
  const put = (cell, ...content) => {
    const old = [...cell.place.childNodes].filter(node => node !== cell.details && node !== cell.note);
    cell.stored ??= old;
    old.forEach(node => node.remove());
    cell.place.append(...content);
    cell.section.querySelector(":scope > .bb-failure")?.remove();
    dispatchEvent(new Event("resize"));
  };
  const show = (cell, reply, key) => {
    put(cell, clean(reply.html));
    if (reply.failure) cell.section.append(clean(reply.failure));
    cell.ran = key;
    cell.failed = Boolean(reply.failure);
    dispatchEvent(new CustomEvent("bb-shown", { detail: cell.place }));
  };
  const restore = cell => {
    if (cell.stored) put(cell, ...cell.stored);
    cell.stored = cell.ran = null;
    cell.failed = false;
  };

  // Cells whose result is no longer that of the texts say so.
  const mark = now => cells.forEach(cell => {
    if (now[cell.at] === ownKeys[cell.at] && !cell.failed) restore(cell);
    cell.note?.remove();
    cell.note = null;
    if (!cell.details || now[cell.at] === (cell.ran ?? ownKeys[cell.at])) return;
    cell.noteSaid = status();
    const go = button("Run", () => run(cell), `Run cell ${cell.at + 1}`);
    go.dataset.do = "run";
    cell.note = make("p", { className: "bb-stale" }, "This result is from before a change. ", go, " ", cell.noteSaid);
    cell.details.after(cell.note);
  });

  let running = null, stopped = 0;
  const busy = cell => {
    running = cell;
    document.querySelectorAll("[data-do=run]").forEach(one => { one.disabled = Boolean(cell); });
    document.querySelectorAll("[data-do=stop]").forEach(one => { one.hidden = !cell; });
  };
  // Runs cells, each after those that it needs; a failure ends it. To prepare is to run only what a cell needs.
  const run = async (spoke, wanted = () => [spoke], prepares = false) => {
    if (running) return;
    const mine = ++serial, began = performance.now();
    busy(spoke);
    say(spoke, begun ? "Running …" : "Starting the compiler …");
    const plan = await ask({ needs: sources() });
    if (stopped >= mine) return;
    const now = plan.fault ? null : keys(plan.needs, sources()), texts = sources();
    let fault = plan.fault;
    for (const cell of fault ? [] : wanted(plan)) {
      const chain = prepares ? plan.needs[cell.at] : [...plan.needs[cell.at], cell.at];
      for (const [i, at] of chain.entries()) {
        say(spoke, `Running cell ${at + 1} …`);
        const reply = await ask({ run: chain.slice(0, i + 1).map(k => texts[k]), name: `${book.name}-${at + 1}` });
        if (stopped >= mine) return;
        fault = reply.fault || (reply.failure && (at === spoke.at ? "This cell failed." : `Cell ${at + 1} failed.`));
        if (!reply.fault && (at === cell.at || reply.failure || texts[at] !== cells[at].own)) show(cells[at], reply, now[at]);
        if (fault) break;
      }
      if (fault) break;
    }
    busy(null);
    if (now) mark(now);
    say(spoke, fault || (prepares ? "Ready." : `Ran in ${((performance.now() - began) / 1000).toFixed(2)} s.`));
    document.documentElement.dataset.ran = String(Number(document.documentElement.dataset.ran || 0) + 1);
  };
  const stop = () => {
    stopped = ++serial;
    desk?.end();
    desk = begun = null;
    say(running, "Stopped.");
    busy(null);
    begin();
  };

  const reset = async chosen => {
    for (const cell of chosen) {
      cell.source = cell.own;
      if (cell.area) {
        cell.area.value = cell.own;
        refused(cell, []);
      }
      restore(cell);
      say(cell, "As the page has it.");
    }
    keep();
    const plan = ownKeys && !running ? await ask({ needs: sources() }) : null;
    if (plan?.needs) mark(keys(plan.needs, sources()));
  };

  const open = (cell, start = true) => {
    if (cell.area) { cell.area.focus(); return; }
    const lines = () => Math.max(2, cell.area.value.split("\n").length);
    cell.details.open = true;
    cell.area = make("textarea", { className: "bb-editor", value: cell.source, spellcheck: false, autocapitalize: "off", wrap: "off" });
    cell.area.setAttribute("aria-label", `C# of cell ${cell.at + 1}`);
    cell.area.rows = lines();
    cell.errors = make("div", { className: "bb-errors", id: `bb-errors-${cell.at}` });
    cell.errors.setAttribute("role", "status");
    cell.area.setAttribute("aria-describedby", cell.errors.id);
    // The same text behind the editor's own, invisible, bears the marks.
    cell.marks = make("div", { className: "bb-marks" });
    cell.marks.setAttribute("aria-hidden", "true");
    cell.area.addEventListener("scroll", () => follow(cell));
    cell.area.addEventListener("input", () => { cell.source = cell.area.value; cell.area.rows = lines(); keep(); typed(cell); });
    cell.list = make("ul", { className: "bb-names", id: `bb-names-${cell.at}`, hidden: true });
    cell.list.setAttribute("role", "listbox");
    cell.list.setAttribute("aria-label", "Names that fit");
    cell.told = make("div", { className: "bb-told" });
    cell.told.setAttribute("role", "status");
    Object.entries({ autocomplete: "list", controls: cell.list.id, keyshortcuts: "Control+Space" })
      .forEach(([name, value]) => cell.area.setAttribute(`aria-${name}`, value));
    const names = button("Suggest names", () => suggest(cell), `Suggest names at the caret, cell ${cell.at + 1}`);
    // The caret stays where it is when the list or the button is pressed.
    [cell.list, names].forEach(one => one.addEventListener("mousedown", event => event.preventDefault()));
    cell.area.addEventListener("blur", () => close(cell));
    cell.area.addEventListener("keydown", event => {
      const plain = !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey);
      if (event.ctrlKey && event.code === "Space") {
        event.preventDefault();
        suggest(cell);
        return;
      }
      if (plain && cell.offer?.fits && listKeys[event.key]) {
        event.preventDefault();
        event.stopPropagation();
        listKeys[event.key](cell);
        return;
      }
      if (event.key === "Escape") close(cell);
      if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey || event.shiftKey)) return;
      event.preventDefault();
      run(cell);
    });
    cell.said = status();
    const go = button("Run", () => run(cell), `Run cell ${cell.at + 1}`), halt = button("Stop", stop);
    const on = button("Run from here", () => run(cell, plan => cells.filter(one => one === cell || plan.needs[one.at].includes(cell.at))),
      `Run from here, cell ${cell.at + 1} and those below that rest on it`);
    go.dataset.do = on.dataset.do = "run";
    halt.dataset.do = "stop";
    halt.hidden = !running;
    go.disabled = on.disabled = Boolean(running);
    const bar = make("div", { className: "bb-run" }, go, on, names, halt, button("Reset", () => reset([cell]), `Reset cell ${cell.at + 1}`),
      make("a", { href: "#bb-edits", textContent: "Save or open" }), cell.said);
    const lined = make("div", { className: "bb-lines" }, cell.marks, cell.area);
    cell.details.querySelector("pre").replaceWith(lined, cell.list, cell.told, cell.errors);
    cell.details.querySelector(".bb-edit").replaceWith(bar);
    edits.hidden = false;
    if (!start) { say(cell, "Edited, and not run yet: the result below is that of the page."); return; }
    cell.area.setSelectionRange(0, 0);
    cell.area.focus();
    run(cell, () => [cell], true);
  };

  // Saved as a notebook without outputs, for any client; what is opened here has this page's cells.
  const save = () => {
    const own = Object.fromEntries(cells.map(cell => [cell.id, cell.source.split(/(?<=\n)/)]));
    const written = { ...book.notebook, cells: book.notebook.cells.map(cell => isCode(cell) ? { ...cell, source: own[cell.id] } : cell) };
    const link = make("a", { download: book.name + ".ipynb",
      href: URL.createObjectURL(new Blob([JSON.stringify(written, null, 1) + "\n"], { type: "application/x-ipynb+json" })) });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };
  const take = async file => {
    let read = null;
    try { read = JSON.parse(await file.text()).cells.filter(isCode); } catch { /* said below */ }
    const texts = new Map((read || []).map(cell => [cell.id, text(cell)]));
    if (texts.size !== cells.length || !cells.every(cell => texts.has(cell.id))) {
      count.textContent = `${file.name} is not this page's notebook: its cells are others. Open it in a notebook client.`;
      return;
    }
    for (const cell of cells) {
      cell.source = texts.get(cell.id);
      if (cell.area) cell.area.value = cell.source;
      else if (cell.source !== cell.own) open(cell, false);
    }
    keep();
  };

  const count = status(), picker = make("input", { type: "file", accept: ".ipynb", hidden: true });
  picker.setAttribute("aria-label", "A notebook to open");
  picker.addEventListener("change", () => { if (picker.files[0]) take(picker.files[0]); picker.value = ""; });
  const all = button("Run all", () => run({ at: -1, said: count }, () => cells)), halt = button("Stop", stop);
  all.dataset.do = "run";
  halt.dataset.do = "stop";
  halt.hidden = true;
  const edits = make("section", { className: "bb-edits", id: "bb-edits", hidden: true }, count,
    make("div", {}, all, halt, button("Reset the page", () => reset(cells)), button("Save as .ipynb", save),
      button("Open .ipynb", () => picker.click()), picker),
    make("p", { textContent: "Edits stay on this device. Cells, also those of a notebook that somebody gave you, run inside the browser's "
      + "sandbox and under this page's content policy: they reach no file of yours and no network." }));
  edits.setAttribute("aria-label", "Edited cells");
  document.getElementById("content").append(edits);
  document.getElementById("bb-code-all")?.addEventListener("click", () => { edits.hidden = false; });
  for (const cell of cells.filter(one => one.details))
    cell.details.append(make("p", { className: "bb-edit" }, button("Edit", () => open(cell), `Edit cell ${cell.at + 1}`)));
  let kept = {};
  try { kept = JSON.parse(localStorage.getItem(KEPT)) || {}; } catch { /* nothing was kept */ }
  for (const cell of cells) {
    if (kept[cell.id]?.own !== cell.own || typeof kept[cell.id].source !== "string") continue;
    cell.source = kept[cell.id].source;
    open(cell, false);
  }
  keep();
})();
