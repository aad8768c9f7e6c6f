// The page of one's own car: keeps the set-ups, asks the calculation assembly in two workers, shows what it says.
(() => {
  "use strict";
  const MOST = 4, NAMES = "ABCDEFGH", SETTLE = 250, WARMING = 160, PATIENCE = 700;
  const $ = id => document.getElementById(id);
  const status = $("live-status"), bar = $("live-bar"), form = $("live-form"), panels = $("live-panels"), dock = $("live-dock");
  const make = (tag, attributes = {}, text = "") => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.textContent = text;
    return element;
  };
  const debounce = (wait, act) => { let timer = 0; return () => { clearTimeout(timer); timer = setTimeout(act, wait); }; };
  const pace = (wait, act) => {
    let timer = 0, due = 0;
    const go = () => { [timer, due] = [0, performance.now() + wait]; act(); };
    return () => { if (performance.now() >= due && !timer) go(); else timer ||= setTimeout(go, due - performance.now()); };
  };

  // ---- Two workers: one for what the hand moves, one for what takes long.
  const startDesk = bbDesk.start;
  let quick = bbDesk.first(), slow = null;
  // Fitting logs takes long, and most changed values ask for it anew: the first worker stays free for what is typed.
  const heavy = () => Object.keys(car().logs).length > 0 && slow || quick;
  // The answer is worked out beside the picture where the other worker has nothing else to do.
  const beside = name => slow?.freeFor(name) ? slow : heavy();

  // ---- State. A set-up is a vehicle file, the logs fitted, what is typed of them, and values moved by sliders but not kept yet.
  // Beside the logs stands the file as it was when they were fitted: what is entered or moved later is a change of that car.
  const whole = (text, logs = {}) => Object.keys(logs).length === 0 || logs.of ? logs : { ...logs, of: text };
  const fresh = (name, text, given) => {
    const logs = whole(text, given), { of, ...typed } = logs;
    return { name, text, logs, typed, set: {}, sliders: [], docked: false, back: [] };
  };
  const page = $("live-first").textContent, written = JSON.parse(page);
  written.logs = whole(written.text, written.logs);
  const state = { units: written.units, tab: "balance", at: 0, cars: [], marks: null, seen: 0, moved: false, bench: "", parts: "",
    targets: "{}" };
  const car = () => state.cars[state.at];
  const unused = () => [...NAMES].find(letter => state.cars.every(one => one.name !== letter));
  // Asked for anew where it may have changed: each time, the browser would have to lay out the page first. Across, a phone is low.
  let room = null;
  const around = () => room ??= { width: Math.floor(Math.max(280, panels.clientWidth - 12)),
    height: Math.floor(Math.max(240, innerHeight - dock.offsetHeight - 60)) };
  const asked = (one = car()) => ({
    text: one.text, logs: one.logs, set: Object.entries(one.set), units: state.units,
    slides: one.sliders.map(({ path, unit }) => [path, unit]),
    ...around(),
  });
  const keep = () => bbDesk.keep({ page, units: state.units, at: state.at, bench: state.bench, parts: state.parts,
    targets: state.targets, cars: state.cars.map(({ name, text, logs, typed }) =>
      ({ name, text, logs, ...(JSON.stringify(typed) !== JSON.stringify({ ...logs, of: undefined }) && { typed }) })) });
  const say = (words, kind = "") => { status.textContent = words; status.dataset.kind = kind; status.hidden = !words; };
  const heard = reply => {
    if (reply?.fault) say("This could not be worked out: " + reply.fault, "fault");
    return reply && !reply.fault ? reply : null;
  };

  // ---- The answer, always in sight. What stands there says so while it is of an earlier state.
  let due = 0, late = 0, told = {};
  const earlier = (words = "") => { $("live-earlier").textContent = words; $("live-earlier").hidden = !words; };
  const working = async asking => {
    due += 1;
    late ||= setTimeout(() => earlier("Working it out … Below stands the answer from before the change."), PATIENCE);
    const reply = await asking;
    if (--due > 0) return reply;
    late = clearTimeout(late);
    earlier(reply?.fault ? "Below stands the answer from before the change." : "");
    return reply;
  };
  const stateNow = () => JSON.stringify({ ...asked(), width: 0, height: 0 });
  const answer = async () => {
    const mine = ++state.seen, now = stateNow();
    const reply = now === told.now ? told.reply : heard(await working(beside("car").ask("car", { do: "car", ...asked() })));
    if (!reply || mine !== state.seen) return;
    told = { now, reply };
    tell(reply);
    if (dockFirst()) await refresh(); // it says where the marks stand in the slider's unit, and the pictures have less room
  };
  const tell = reply => {
    $("live-whose").hidden = !reply.invented || car().text !== written.text;
    $("live-whose").firstChild.textContent = reply.name + (/invented/i.test(reply.name) ? "." : ", an invented car.");
    if (status.dataset.kind === "fault") say("");
    mark(reply);
    bar.dataset.state = reply.problems.length > 0 ? "problems" : reply.beyond ? "beyond" : "good";
    if (reply.problems.length > 0) {
      const [first] = reply.problems, count = reply.problems.length;
      const needs = count === 1 ? "One entry needs" : `${count} entries need`;
      const words = `${first.path || "the file"} ${first.words}`;
      $("live-said").replaceChildren(make("p", {}, `${needs} another value before there is an answer; the first: ${words}`));
      return;
    }
    $("live-said").innerHTML = reply.bar;
    document.title = `${reply.name} – Brake balance notebooks`;
    state.marks = reply.marks;
    sliders();
  };
  let behindOf = "";
  const behind = async () => {
    const now = stateNow(), reply = now === behindOf ? null : heard(await slow.ask("behind", { do: "behind", ...asked() }));
    if (!reply) return;
    $("live-answer").innerHTML = reply.html;
    behindOf = now;
  };

  // ---- The form.
  // Where no field has a path stands the nearest part around it.
  const partOf = path => !path ? null : form.querySelector(`[data-part="${CSS.escape(path)}"]`)
    || partOf(path.replace(/(\[\d+\]|\.?[^.[\]]+)$/, ""));
  const mark = reply => {
    for (const place of form.querySelectorAll(".bb-wrong, .bb-warned")) place.hidden = true;
    for (const one of form.querySelectorAll(".bb-badge, .bb-of-part")) one.remove();
    const loose = [];
    const show = (list, kind) => list.forEach(({ path, words }) => {
      const field = form.querySelector(`[data-field="${CSS.escape(path)}"]`) ||
        form.querySelector(`[data-field="${CSS.escape(path.replace(/\[\d+\]$/, ""))}"]`);
      const part = field ? null : partOf(path);
      if (!field && !part) { loose.push((path ? path + ": " : "") + words); return; }
      const place = part ? make("p") : field.querySelector(".bb-wrong, .bb-warned");
      const rest = part ? path.slice(part.dataset.part.length).replace(/^\./, "") : "";
      place.textContent = (rest ? rest + ": " : "") + words;
      place.className = part ? kind + " bb-of-part" : kind;
      place.hidden = false;
      part?.firstElementChild.after(place);
      const summary = place.closest(".bb-part")?.querySelector("summary");
      if (summary && !summary.querySelector(".bb-badge")) summary.append(make("b", { class: "bb-badge" }, kind === "bb-wrong"
        ? " fill in" : " look again"));
    });
    show(reply.problems, "bb-wrong");
    show(reply.warnings || [], "bb-warned");
    $("live-loose").replaceChildren(...loose.concat(reply.logProblems || []).map(words => make("li", {}, words)));
  };
  const openKeys = () => [...form.querySelectorAll("details")].map((one, i) => [one.dataset.part || "n" + i, one.open]);
  let drawn = "", typing = "";
  const drawForm = async () => {
    const { text } = car(), reply = heard(await quick.ask("form", { do: "form", text, units: state.units }));
    if (reply && !typing) putForm(reply, text);
  };
  const putForm = (reply, text) => {
    drawn = text;
    const was = new Map(openKeys()), focus = document.activeElement?.id;
    form.innerHTML = reply.html;
    [...form.querySelectorAll("details")].forEach((one, i) => { if (was.get(one.dataset.part || "n" + i)) one.open = true; });
    if (was.size === 0) form.querySelector("details").open = true;
    if (focus && focus.startsWith("f-")) $(focus)?.focus();
  };
  // What changes a car is worked in one after the other, each into the set-up that it was meant for; then the form is drawn once.
  let changes = Promise.resolve(), turns = 0;
  const inTurn = change => {
    turns += 1;
    changes = changes.then(change).catch(error => say(String(error), "fault")).then(async () => {
      turns -= 1;
      if (turns > 0 || typing || drawn === car().text) return;
      await drawForm();
      refresh();
    });
    return working(changes);
  };
  const edit = (how, path, value = "") => {
    const one = car();
    return inTurn(async () => {
      const { text } = heard(await quick.ask("edit", { do: "edit", text: one.text, how, path, value })) ?? one;
      if (text === one.text) return;
      one.back.push({ text: one.text });
      one.text = text;
      state.removed = null;
      say(how === "kind" ? "What only the other kind has is taken out; Undo brings it back." : ""); // not of the file before
      keep();
    });
  };
  form.addEventListener("change", event => {
    const { path, kind } = event.target.dataset;
    typing = "";
    if (path !== undefined) edit("set", path, event.target.value);
    else if (kind !== undefined && event.target.value) edit("kind", kind, event.target.value);
  });
  // A form that is drawn anew would take away what is just being typed.
  form.addEventListener("focusout", event => { if (event.target.id === typing) { typing = ""; inTurn(() => {}); } });
  form.addEventListener("input", async event => {
    const { id, dataset: { path }, value } = event.target, place = $(id + "-beside");
    typing = id;
    if (!place) return;
    const reply = await quick.ask("beside " + path, { do: "beside", text: car().text, path, value, units: state.units });
    if (reply?.text !== undefined && event.target.value === value) place.textContent = reply.text;
  });
  form.addEventListener("click", event => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.how) edit(button.dataset.how, button.dataset.at);
    else if (button.dataset.slide) {
      const { slide: path } = button.dataset;
      if (car().sliders.some(one => one.path === path)) { drop(path); return; }
      slide(button);
      [state.seen, state.marks] = [state.seen + 1, null];
      answer(); // says where the marks stand in its unit; what was asked before may mean another
    }
  });
  const slide = button => {
    const { slide: path, low, high, value, unit, decimals } = button.dataset;
    const label = form.querySelector(`[data-field="${CSS.escape(path)}"] label`).textContent;
    const inList = /\]\.[^.[]*$/.test(path); // of one of several, that one's name
    const part = button.closest(inList ? ".bb-inner" : ".bb-part").querySelector("legend, summary span").textContent;
    car().sliders.push({ path, label: part === "The car" ? label : `${part}: ${label.toLowerCase()}`, low: +low, high: +high,
      value: +value, unit, decimals: +decimals });
    sliders();
  };
  // The adjuster's slider stands beside the pictures from the first, unless another does; who takes it away is rid of it.
  const dockFirst = () => {
    const one = car(), path = state.tab === "balance" && !one.docked && one.sliders.length === 0 && state.marks?.path;
    const button = path && form.querySelector(`[data-slide="${CSS.escape(path)}"]`);
    if (button) slide(button);
    one.docked ||= Boolean(button);
    return Boolean(button);
  };

  // ---- Sliders: any number, in sight with the picture.
  const worded = slider => slider.value.toFixed(slider.decimals) + (slider.unit ? " " + slider.unit : "");
  // A share stands as the answers name it; the file keeps its fraction.
  const shown = slider => slider.unit || !/[Ss]hare$/.test(slider.path) ? worded(slider) : (100 * worded(slider)).toFixed(1) + " %";
  const lift = path => { car().sliders = car().sliders.filter(one => one.path !== path); delete car().set[path]; sliders(); };
  const drop = path => { lift(path); refresh(); };
  const track = slider => {
    const marks = state.marks;
    if (!marks || marks.path !== slider.path) return [];
    const points = [["safe", marks.safe], ["recommended", marks.recommended]].filter(([, one]) => one);
    // The track reaches as far as its marks and the adjuster.
    const ends = points.map(([, one]) => one.at).concat(marks.reach ?? []).filter(at => at !== null);
    slider.low = Math.min(slider.low, ...ends);
    slider.high = Math.max(slider.high, ...ends);
    return points.map(([kind, one]) =>
      ({ kind, share: one.at === null ? NaN : (one.at - slider.low) / (slider.high - slider.low), text: one.text }));
  };
  // In the other units the track is another one, and the value that was moved stays where it was.
  const reslide = async () => {
    for (const slider of car().sliders) {
      const reply = heard(await quick.ask("slide " + slider.path, {
        do: "slide", text: car().text, path: slider.path, value: worded(slider), units: state.units,
      }));
      if (reply) Object.assign(slider, reply);
      if (slider.path in car().set) car().set[slider.path] = worded(slider);
    }
    [state.seen, state.marks] = [state.seen + 1, null]; // what was asked in the other units is of no use here
    dock.replaceChildren();
    sliders();
  };
  const sliders = () => {
    for (const button of form.querySelectorAll(".bb-slide")) button.setAttribute("aria-pressed", String(car().sliders.some(one =>
      one.path === button.dataset.slide)));
    if (dock.hidden !== (car().sliders.length === 0)) [dock.hidden, room] = [!dock.hidden, null];
    document.documentElement.classList.toggle("bb-docked", !dock.hidden);
    const known = new Map([...dock.querySelectorAll(".bb-slider")].map(one => [one.dataset.path, one]));
    const rows = car().sliders.map(slider => {
      let row = known.get(slider.path);
      if (!row) {
        const id = "s-" + slider.path.replace(/[^a-z0-9]/gi, "-");
        row = make("div", { class: "bb-slider", "data-path": slider.path });
        const range = make("input", { id, type: "range", min: slider.low, max: slider.high, step: "any" });
        range.value = slider.value;
        const output = make("output", { for: id });
        const ticks = make("div", { class: "bb-ticks", "aria-hidden": "true" });
        const keepIt = make("button", { type: "button" }, "Keep"), away = make("button", { type: "button" }, "Undo");
        keepIt.addEventListener("click", () => { const kept = worded(slider); lift(slider.path); edit("keep", slider.path, kept); });
        away.addEventListener("click", () => drop(slider.path));
        range.addEventListener("input", () => {
          const before = first(); // before anything is changed, or the browser would have to lay out the page for it
          slider.value = Number(range.value);
          car().set[slider.path] = worded(slider);
          output.textContent = shown(slider);
          range.setAttribute("aria-valuetext", shown(slider));
          moved(before);
        });
        // Arrow keys move by a hundredth of the track; "any" has no step of its own.
        range.addEventListener("keydown", event => {
          const step = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[event.key];
          if (!step) return;
          event.preventDefault();
          range.value = Number(range.value) + step * (slider.high - slider.low) / 100;
          range.dispatchEvent(new Event("input"));
        });
        row.append(make("label", { for: id }, slider.label), output, keepIt, away, range, ticks, make("small", {}));
        output.textContent = shown(slider);
        range.setAttribute("aria-valuetext", shown(slider));
      }
      const points = track(slider), range = row.querySelector("input");
      [range.min, range.max] = [slider.low, slider.high];
      row.querySelector(".bb-ticks").replaceChildren(...points.filter(point => point.share >= 0 && point.share <= 1).map(point => {
        const tick = make("i", { class: "bb-tick-" + point.kind });
        tick.style.left = `calc(${(100 * point.share).toFixed(2)}% + ${(1.15 - 2.3 * point.share).toFixed(3)}rem)`;
        return tick;
      }));
      row.querySelector("small").replaceChildren(...points.map(point => {
        const said = make("span", {}, point.text);
        said.prepend(make("i", { class: "bb-tick-" + point.kind, "aria-hidden": "true" }));
        return said;
      }));
      return row;
    });
    // Rows that stay are not put in again: the one under the hand would lose the focus.
    if (rows.length !== dock.children.length || rows.some((row, i) => row !== dock.children[i])) dock.replaceChildren(...rows);
  };

  // ---- Pictures. The one in sight follows the slider; the others when the hand rests.
  const drawing = () => JSON.stringify({ ...asked(), slides: [] });
  const age = one => { if (!("stale" in one.dataset)) one.dataset.stale = ""; };
  const pictures = () => [...panels.querySelectorAll(`#live-${state.tab} figure[data-figure]`)];
  const paint = async (element, desk = heavy()) => {
    const request = { do: "figure", name: element.dataset.figure, ...asked() }, of = drawing();
    element.dataset.stale = "";
    const began = performance.now();
    const reply = await desk.ask("figure " + element.dataset.figure, request), now = drawing();
    if (!reply) return;
    // What comes late shows an earlier state: it is drawn only where nothing newer is, and stays marked until it is drawn anew.
    if (element.of === now && of !== now) { delete element.dataset.stale; return; }
    element.of = of;
    if (of === now) delete element.dataset.stale;
    else { rest(); restLong(); }
    element.removeAttribute("aria-busy");
    if (reply.fault) { element.replaceChildren(make("p", { class: "bb-warned" }, reply.fault)); return; }
    element.hidden = !reply.html && !reply.needs;
    if (reply.html) {
      const open = element.querySelector(".bb-data")?.open;
      element.innerHTML = reply.html;
      element.querySelector(".bb-data").open = Boolean(open);
      element.append(saves(element.dataset.figure, element));
      element.dataset.took = String(Math.round(performance.now() - began));
    } else if (reply.needs) element.replaceChildren(make("p", { class: "bb-needs" }, reply.needs));
  };
  const saves = (name, figure) => {
    const title = figure.querySelector(".bb-title").textContent;
    const row = make("div", { class: "bb-saves", role: "group", "aria-label": "Save: " + title }, "Save:");
    for (const kind of ["SVG", "PNG", "CSV"]) row.append(make("button", { type: "button", "data-save": kind, "data-name": name,
      "aria-label": `${kind}: ${title}` }, kind));
    return row;
  };
  const inSight = element => { const box = element.getBoundingClientRect(); return box.bottom > 0 && box.top < innerHeight; };
  const rest = debounce(SETTLE, () => {
    const of = drawing();
    for (const one of pictures().filter(inSight)) if (one.of !== of) paint(one, one === first() ? heavy() : slow || quick);
    share(); });
  // What stands behind the answer takes seconds, in which the answer of a new hand's turn would wait.
  const restLong = debounce(6 * SETTLE, () => restNow());
  const restNow = async () => { await drawRest(); if (slow && state.tab === "balance") await behind(); };
  // What is out of sight is drawn too while nobody asks, for printing cannot wait; by one at a time, or two would take each other's turn.
  const undrawn = () => pictures().find(one =>
    one !== first() && !one.hidden && (one.childElementCount === 0 || "stale" in one.dataset));
  let resting = false, again = false;
  const drawRest = async () => {
    again = resting;
    if (resting) return;
    resting = true;
    do {
      again = false;
      const { seen } = state;
      for (let next = undrawn(); next && slow && seen === state.seen; next = undrawn()) await paint(next, slow);
    } while (again);
    resting = false;
  };
  addEventListener("beforeprint", () => drawRest());
  const first = () => pictures().find(inSight) || pictures()[0];
  const watcher = new IntersectionObserver(entries => entries.forEach(({ isIntersecting, target }) => {
    if (isIntersecting && !target.hidden && (target.childElementCount === 0 || "stale" in target.dataset)) paint(target, slow || quick);
  }), { rootMargin: "300px" });
  // The picture goes before the answer, which is worked out in the gap after one: in front of the next it would hold that one up.
  const follow = pace(SETTLE / 2, () => answer());
  const moved = async one => {
    state.moved = true;
    for (const other of pictures()) if (other !== one) age(other);
    rest();
    restLong();
    if (one) await paint(one);
    follow();
  };
  const refresh = async () => {
    // What is drawn of this state already, at this width, stays.
    const of = drawing();
    for (const one of [...panels.querySelectorAll("figure[data-figure]")].filter(one => one.of !== of)) { age(one); one.hidden = false; }
    const done = [answer()];
    const shown = first();
    if (shown && shown.of !== of) done.push(paint(shown));
    if (state.tab === "measure") done.push(measured());
    if (state.tab === "compare") done.push(compare());
    if (state.tab === "choose") done.push(choosing());
    done.push(share());
    if (state.tab === "paper") done.push(sheet("card"), sheet("bench"));
    await Promise.all(done);
    for (const one of pictures()) { watcher.unobserve(one); watcher.observe(one); }
    restNow();
  };
  const download = (name, content, type) => {
    const link = make("a", { href: URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type })),
      download: name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  };
  // A file of the reader's own, unless it is too long to be what is asked for.
  const opened = async (event, most, use) => {
    const [file] = event.target.files;
    if (file && file.size > most) say(`${file.name}: ${file.size} bytes are too many. Accepted: at most ${most / 1e6} MB.`, "fail");
    else if (file) await use(file);
  };
  const openedText = async (event, most, use) => {
    await opened(event, most, async file => use(await file.text()));
    event.target.value = "";
  };
  // A figure is saved as the program writes it: light, with its title and credit; the picture has two points to each of the drawing's.
  panels.addEventListener("click", async event => {
    const button = event.target.closest("[data-save]");
    if (!button) return;
    const reply = heard(await (slow || quick).ask("save " + button.dataset.save, { do: "save", name: button.dataset.name,
      ...asked(), cars: all(), letters: await unpack(JSON.parse($("live-letters").textContent)) }));
    if (!reply?.svg) return;
    const { svg, csv, drawing, numbers, width, height } = reply;
    if (button.dataset.save === "CSV") { download(numbers, csv, "text/csv"); return; }
    if (button.dataset.save === "SVG") { download(drawing + ".svg", svg, "image/svg+xml"); return; }
    const image = new Image(), large = svg.replace(/ width="\d+"/, ` width="${width}" height="${height}"`);
    image.addEventListener("load", () => {
      const canvas = make("canvas", { width, height });
      canvas.getContext("2d").drawImage(image, 0, 0, width, height);
      canvas.toBlob(blob => download(drawing + "-2x.png", blob));
    });
    image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(large);
  });

  // ---- Paper: documents of their own, each in a frame that prints alone.
  const ready = (kind, so) => {
    for (const button of panels.querySelectorAll(`[data-print=${kind}], [data-keep=${kind}]`)) button.disabled = !so; };
  const sheet = async kind => {
    const bench = $("bench-text");
    ready(kind, false);
    if (kind === "bench" && bench !== document.activeElement) bench.value = state.bench;
    const wanted = kind === "card" ? { paper: $("card-paper").value, load: $("card-load").value } : { bench: state.bench };
    const reply = kind === "card" || state.bench.trim() ? heard(await (slow || quick).ask(kind, { do: kind, ...asked(), ...wanted })) : {};
    if (!reply) return;
    const frame = $(kind + "-sheet"), load = $("card-load");
    frame.hidden = !reply.html;
    ready(kind, reply.html);
    if (frame.srcdoc !== (reply.html || "")) frame.srcdoc = reply.html || "";
    frame.dataset.name = reply.name || "";
    if (kind === "bench") {
      $("bench-problems").replaceChildren(...(reply.problems || []).map(words => make("li", {}, words)));
      $("bench-said").textContent = reply.said || "";
    } else if (reply.loads && reply.loads.join() !== [...load.options].map(one => one.value).join())
      load.replaceChildren(...reply.loads.map(name => make("option", { value: name }, name)));
  };
  for (const frame of document.querySelectorAll(".bb-paper")) frame.addEventListener("load", () => {
    const inside = frame.contentDocument?.documentElement;
    if (inside && !frame.hidden) frame.style.height = inside.scrollHeight + 4 + "px";
  });
  for (const id of ["card-paper", "card-load"]) $(id).addEventListener("change", () => sheet("card"));
  panels.addEventListener("click", event => {
    const { print, keep: kept } = event.target.dataset, frame = $((print || kept) + "-sheet");
    if (print) { frame.contentWindow.focus(); frame.contentWindow.print(); }
    else if (kept) download(frame.dataset.name, frame.srcdoc, "text/html");
  });
  const takeBench = async text => { state.bench = text; keep(); $("bench-text").value = text; await sheet("bench"); };
  $("bench-make").addEventListener("click", () => takeBench($("bench-text").value));
  $("bench-keep").addEventListener("click", () => download("bench.json", $("bench-text").value, "application/json"));
  $("bench-begin").addEventListener("click", async () => {
    const reply = heard(await quick.ask("job", { do: "job" }));
    if (reply) takeBench(reply.text);
  });
  $("bench-open").addEventListener("change", event => openedText(event, 4e6, takeBench));

  // ---- Own measurements: what was typed is read when asked for, and can be stopped.
  let filled = null;
  const measured = async () => {
    if (filled !== car().typed) for (const kind of ["gauges", "stops"]) $("log-" + kind).value = car().typed[kind] || "";
    filled = car().typed;
    const typed = Object.keys(car().logs).length > 0;
    const reply = typed ? heard(await (slow || quick).ask("measured", { do: "measured", ...asked() })) : null;
    if (typed && !reply) return;
    $("live-measured").innerHTML = reply?.html || "";
    $("live-next").innerHTML = heard(await (slow || quick).ask("next", { do: "next", ...asked() }))?.html || "";
  };
  const later = debounce(SETTLE, () => keep());
  const type = (kind, text) => {
    const { typed } = car(), place = $("log-" + kind);
    typed[kind] = text;
    if (place.value !== text) place.value = text;
    later();
  };
  for (const kind of ["gauges", "stops"]) $("log-" + kind).addEventListener("input", event => type(kind, event.target.value));
  let fits = 0, unfit = () => {};
  // How long it takes nobody knows before: what is being done is said, and for how long already.
  let clock = 0;
  const fitting = so => {
    for (const one of ["live-cancel", "live-progress"]) $(one).hidden = !so;
    clearInterval(clock);
    const began = Date.now(), tick = () => { $("live-progress").textContent = (told.now === stateNow()
      ? "Drawing, and looking for what to measure next" : "Fitting the car to its measurements")
      + `: ${Math.round((Date.now() - began) / 1000)} s`; };
    if (so) { tick(); clock = setInterval(tick, 1000); }
  };
  $("live-fit").addEventListener("click", async () => {
    const mine = ++fits, one = car(), before = one.logs;
    one.logs = {};
    for (const kind of ["gauges", "stops"]) {
      type(kind, $("log-" + kind).value);
      if (one.typed[kind].trim()) one.logs[kind] = one.typed[kind];
    }
    one.logs = whole(one.text, one.logs);
    const tried = one.logs;
    unfit = () => { if (one.logs === tried) one.logs = before; };
    keep();
    say("Fitting the car to its measurements …");
    fitting(true);
    // What is moved meanwhile takes the answer's turn: the fit goes on with it.
    do await refresh(); while (mine === fits && one === car() && told.now !== stateNow() && !status.dataset.kind);
    if (mine !== fits) return;
    fitting(false);
    if (status.dataset.kind) return;
    if (one !== car()) say("");
    else if (told.reply.logProblems.length > 0) say("Nothing was fitted: a log cannot be read as it is.", "fail");
    else say("Fitted.");
  });
  const stop = async () => {
    say("Stopped.", "fail");
    (slow || quick).end();
    if (slow) { slow = startDesk(); await slow.ready; } else { quick = startDesk(); await quick.ready; }
    await answer();
  };
  $("live-cancel").addEventListener("click", () => {
    fits += 1;
    fitting(false);
    unfit();
    keep();
    return stop();
  });
  for (const button of document.querySelectorAll("[data-log]")) button.addEventListener("click", async () => {
    const kind = button.dataset.log, reply = heard(await quick.ask("log", { do: "log", kind, units: state.units }));
    if (reply && (!$("log-" + kind).value.trim() || confirm("Put an empty form in place of what is typed?"))) type(kind, reply.text);
  });
  // Loggers write in many encodings: the assembly tells which.
  const openedLog = (event, use) => opened(event, 20e6, async file => {
    const reader = new FileReader(), read = new Promise(resolve => reader.addEventListener("load", resolve));
    reader.readAsDataURL(file);
    await read;
    const reply = heard(await (slow || quick).ask("decode", { do: "decode", bytes: reader.result.split(",")[1] }));
    if (reply) await use(reply.text, file.name);
  });
  for (const input of document.querySelectorAll("[data-log-file]")) input.addEventListener("change", event =>
    openedLog(event, text => type(input.dataset.logFile, text)));
  // A logger's export is looked at and not kept: it may be long.
  $("file-series").addEventListener("change", event => openedLog(event, async (log, name) => {
    say("Looking for stops …");
    const reply = heard(await (slow || quick).ask("series", { do: "series", log, units: state.units }));
    if (!reply) return;
    $("live-series").innerHTML = reply.html;
    say(name);
  }));

  // ---- Parts: every combination, piece by piece in the second worker, so that how far it is can be said and it can be stopped.
  const wrong = words => $("parts-problems").replaceChildren(...words.map(one => make("li", {}, one)));
  const targets = async text => {
    const reply = heard(await quick.ask("targets", { do: "targets", targets: text, units: state.units }));
    if (!reply) return;
    wrong(reply.problems || []);
    if (reply.problems) return;
    state.targets = reply.text;
    $("parts-targets").innerHTML = reply.html;
    keep();
  };
  const choosing = async () => {
    if ($("parts-text") !== document.activeElement) $("parts-text").value = state.parts;
    if (!$("parts-targets").firstChild) await targets(state.targets);
    if (state.found) await search();
  };
  $("parts-text").addEventListener("change", event => { state.parts = event.target.value; keep(); });
  $("parts-targets").addEventListener("change", event => {
    const { target: path, shape } = event.target.dataset, value = event.target.value.trim(), all = JSON.parse(state.targets);
    const steps = path.split("."), last = steps.pop();
    const at = steps.reduce((one, step) => one[step] ??= {}, all);
    if (!value) delete at[last];
    else at[last] = shape === "flag" ? value === "true" : shape === "number" && Number.isFinite(Number(value)) ? Number(value) : value;
    for (const step of steps) if (Object.keys(all[step]).length === 0) delete all[step];
    state.targets = JSON.stringify(all);
    keep();
  });
  const parts = text => { state.parts = text; $("parts-text").value = text; keep(); };
  $("parts-begin").addEventListener("click", async () => {
    const reply = heard(await quick.ask("parts", { do: "parts", ...asked() }));
    if (reply) parts(reply.text);
  });
  $("parts-open").addEventListener("change", event => openedText(event, 4e6, parts));
  $("targets-open").addEventListener("change", event => openedText(event, 1e6, targets));
  $("parts-keep").addEventListener("click", () => download("parts.csv", state.parts, "text/csv"));
  $("targets-keep").addEventListener("click", () => download("targets.json", state.targets, "application/json"));
  const search = async () => {
    const mine = state.search = {}, bar = $("parts-done"), { text, set, logs } = asked();
    let reply = null, some = 20;
    [bar.hidden, $("parts-stop").hidden, bar.value] = [false, false, 0];
    while (mine === state.search) {
      const began = performance.now();
      reply = heard(await (slow || quick).ask("choose", { do: "choose", text, set, logs, units: state.units, some,
        parts: state.parts, targets: state.targets }));
      if (!reply || reply.problems || mine !== state.search) break;
      if (reply.html && !reply.asked) found(reply);
      if (reply.html && !reply.cars) break;
      some = reply.html && !reply.asked ? 1
        : Math.max(1, Math.round(some * Math.min(2, 300 / (performance.now() - began + 1))));
      [bar.max, bar.value] = [reply.cars || reply.count, reply.html ? reply.asked : reply.done];
      say(reply.html ? `${reply.asked} of ${reply.cars} cars of the file's ranges asked …`
        : reply.done < reply.count ? `${reply.done.toLocaleString("en")} of ${reply.count.toLocaleString("en")} combinations tried …`
        : "All are tried. Asking the best more closely …");
    }
    if (mine !== state.search) return;
    [bar.hidden, $("parts-stop").hidden, state.found] = [true, true, Boolean(reply?.html)];
    if (!reply) return;
    say("");
    wrong(reply.problems || []);
    if (!reply.html) $("parts-found").replaceChildren();
  };
  const found = reply => {
    const place = $("parts-found"), at = [...place.querySelectorAll("button")].indexOf(document.activeElement);
    place.innerHTML = reply.html;
    const takes = reply.sets.map((file, i) => {
      const button = make("button", { type: "button" }, `Take set ${i + 1}`);
      button.addEventListener("click", () => {
        if (state.cars.length >= MOST) { say(`There are ${MOST} set-ups. Remove one under Car first.`, "fail"); return; }
        state.cars.push(fresh(unused(), file));
        say(`Set ${i + 1} is set-up ${state.cars.at(-1).name} now; under Compare it stands beside the others.`);
        state.found = false;
        leave(state.cars.length - 1);
      });
      return button;
    });
    const row = make("div", { class: "bb-row", role: "group", "aria-label": "Take a set as a set-up" });
    row.append(...takes);
    place.querySelector(".bb-table")?.after(row);
    takes[at]?.focus();
  };
  $("parts-go").addEventListener("click", () => { state.parts = $("parts-text").value; keep(); return search(); });
  $("parts-stop").addEventListener("click", () => {
    state.search = null;
    [$("parts-stop").hidden, $("parts-done").hidden] = [true, true];
    stop();
  });

  // ---- Set-ups side by side.
  const all = () => {
    const others = state.cars.filter(one => one !== car()).slice(0, MOST - 1);
    return state.cars.filter(one => one === car() || others.includes(one)).map(one => ({ name: one.name, ...asked(one) }));
  };
  const compare = async () => {
    const place = $("live-compared");
    if (!place.firstChild) place.append("Working it out …");
    const reply = heard(await (slow || quick).ask("compare", { do: "compare", ...asked(), cars: all() }));
    place.innerHTML = reply?.html || "";
    const figure = place.querySelector("figure");
    if (figure) figure.append(saves("set-ups", figure));
  };
  const setups = () => {
    const buttons = state.cars.map((one, i) => {
      const button = make("button", { type: "button", "aria-pressed": String(i === state.at) }, one.name);
      button.addEventListener("click", () => { leave(i); });
      return button;
    });
    if (state.cars.length < MOST) {
      const more = make("button", { type: "button" }, "Copy to a new set-up");
      const from = car();
      more.addEventListener("click", () => inTurn(async () => {
        if (state.cars.length >= MOST) return;
        const copy = { ...fresh(unused(), from.text, { ...from.logs }), typed: { ...from.typed } };
        for (const [path, value] of Object.entries(from.set)) copy.text = heard(await quick.ask("edit", { do: "edit", text: copy.text,
          how: "keep", path, value }))?.text ?? copy.text;
        state.cars.push(copy);
        leave(state.cars.length - 1);
      }));
      buttons.push(more);
    }
    if (state.cars.length > 1) {
      const away = make("button", { type: "button" }, `Remove ${car().name}`);
      away.addEventListener("click", () => {
        const [one] = state.cars.splice(state.at, 1);
        state.removed = { one, at: state.at };
        say(`Set-up ${one.name} is removed; Undo brings it back.`);
        leave(Math.max(0, state.at - 1));
      });
      buttons.push(away);
    }
    $("live-setups").replaceChildren(...buttons);
  };
  const leave = async to => {
    [state.at, typing] = [to, ""];
    keep();
    setups();
    await reslide();
    await drawForm();
    await refresh();
  };

  // ---- Tabs, units, files.
  const turn = tab => {
    if (tab !== state.tab) scrollTo(0, 0); // a part begins with its first picture, wherever the last one was left
    state.tab = tab;
    for (const button of $("live-tabs").children) {
      button.setAttribute("aria-current", String(button.dataset.tab === tab));
      if (button.dataset.tab === tab) $("live-tabs").scrollLeft = button.offsetLeft - $("live-tabs").clientWidth / 2;
    }
    for (const panel of panels.children) panel.hidden = panel.id !== "live-" + tab;
  };
  const show = async tab => {
    turn(tab);
    for (const kind of ["card", "bench"]) ready(kind, false);
    await changes;
    await refresh();
  };
  $("live-tabs").addEventListener("click", event => { if (event.target.dataset.tab) show(event.target.dataset.tab); });
  $("live-own").addEventListener("click", () => show("car"));
  $("live-units").addEventListener("change", async event => { [state.units, typing] = [event.target.value, ""]; keep(); await reslide();
    $("parts-targets").replaceChildren(); await drawForm(); await refresh(); });
  const open = (given, words, one = car()) => inTurn(async () => {
    const opened = given.length > 1_000_000 ? { text: given } : heard(await quick.ask("open", { do: "open", text: given }));
    if (!opened) return;
    const { text, logs = {} } = opened;
    if (!text.trim()) { say(`${words}: there is nothing in it.`, "fail"); return; }
    if (text.length > 1_000_000) { say(`${words}: ${text.length} characters are too many. Accepted: a vehicle file of at most 1,000,000.`,
      "fail"); return; }
    const { back, ...before } = one;
    Object.assign(one, { ...fresh(one.name, text, logs), back: [...back, before] });
    [state.removed, drawn, typing] = [null, "", ""];
    sliders();
    keep();
    say(words);
  });
  $("live-open").addEventListener("change", async event => { const [file] = event.target.files;
    if (file) open(file.size > 4e6 ? " ".repeat(1_000_001) : await file.text(), file.name); event.target.value = ""; });
  addEventListener("dragover", event => event.preventDefault());
  addEventListener("drop", async event => { event.preventDefault(); const [file] = event.dataTransfer.files;
    if (file) open(file.size > 4e6 ? " ".repeat(1_000_001) : await file.text(), file.name); });
  $("live-paste").addEventListener("click", () => { if ($("live-text").value.trim()) open($("live-text").value, "Pasted file"); });
  $("live-save").addEventListener("click", async () => {
    const one = car();
    await changes;
    const reply = heard(await quick.ask("file", { do: "file", ...asked(one) }));
    for (const { name, text } of reply?.files || []) download(name, text, name.endsWith(".csv") ? "text/csv" : "application/json");
  });
  $("live-undo").addEventListener("click", () => {
    const one = car(), { removed } = state;
    if (removed) {
      state.removed = null;
      if (state.cars.some(other => other.name === removed.one.name)) removed.one.name = unused();
      state.cars.splice(removed.at, 0, removed.one);
      say("");
      leave(removed.at);
    } else inTurn(() => { Object.assign(one, one.back.pop()); sliders(); keep(); });
  });
  // Two pages on one device keep their set-ups in one place.
  addEventListener("storage", event => { if (event.key === "bb-cars" && event.newValue)
    say("Another page on this device keeps other set-ups since: open this page anew to have them. What is changed here takes their place.",
      "fail"); });
  $("live-forget").addEventListener("click", () => { bbDesk.forget(); say("Nothing is kept on this device any more."); });
  $("live-begin").addEventListener("change", async event => {
    const [what, name] = event.target.value.split(":");
    if (!what) return;
    event.target.value = "";
    const reply = heard(await quick.ask("begin", what === "demo" ? { do: "demo", name } : { do: "new", class: name }));
    if (reply) open(reply.text, what === "demo" ? `${name}: an invented car` : `A ${name}: only its class is known yet`);
  });
  // From a disk a link leads nowhere on another device: there the words of the car go alone.
  const held = name => changes.then(() => (slow || quick).ask(name, { do: "link", ...asked(), page: /^https?:$/.test(location.protocol)
    ? location.href.split("#")[0] : "" }));
  const scan = $("live-scan");
  const share = async () => {
    if (scan.hidden) return;
    const reply = heard(await held("scan"));
    if (reply) scan.innerHTML = reply.html;
  };
  $("live-picture").addEventListener("click", event => {
    scan.hidden = !scan.hidden;
    event.target.setAttribute("aria-expanded", String(!scan.hidden));
    scan.replaceChildren();
    share();
  });
  scan.addEventListener("click", event => { if (event.target.closest("[data-hand-on]")) $("live-save").click(); });
  $("live-link").addEventListener("click", async () => {
    const reply = heard(await held("link"));
    if (!reply) return;
    try { await navigator.clipboard.writeText(reply.link);
      say(reply.link === reply.words ? "The words of this car are copied: paste them in a your-car.html on another device, under Car."
        : "The link is copied; it holds the whole car."); }
    catch { location.hash = reply.words; say("The link stands in the address bar; it holds the whole car."); }
  });
  const unpack = async words => {
    const packed = Uint8Array.from(atob(words.replaceAll("-", "+").replaceAll("_", "/")), letter => letter.charCodeAt(0));
    return await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"))).text();
  };
  const fromLink = async () => {
    if (location.hash.length < 2) return null;
    const reply = await quick.ask("open", { do: "open", text: location.hash });
    if (reply?.fault) say(reply.fault, "fail");
    return !reply || reply.fault || reply.text === location.hash ? null : reply;
  };
  // What comes from elsewhere stands before the set-ups kept on this device, and takes the place of none while there is room.
  const takeIn = (text, logs, words) => {
    const same = JSON.stringify([text, whole(text, logs)]), at = state.cars.findIndex(one => JSON.stringify([one.text, one.logs]) === same);
    state.at = Math.max(0, at);
    if (at >= 0) return;
    const out = state.cars.length < NAMES.length ? null : state.cars.pop();
    if (state.cars.length > 0) say(`${words}: it comes first, the set-ups kept on this device stand beside it`
      + (out ? `; set-up ${out.name} had to make room for it.` : "."));
    state.cars.unshift(fresh(unused(), text, logs));
  };
  const takeLink = linked => {
    if (!linked) return;
    takeIn(linked.text, linked.logs, "A car came by the link");
    keep();
    location.replace("#"); // or the link would come again with every look at the page
  };
  addEventListener("hashchange", async () => {
    const linked = await fromLink();
    takeLink(linked);
    if (linked) leave(state.at);
  });
  // What gets the focus stays clear of what stands before it: the answer above, the sliders below.
  const clear = new ResizeObserver(() => { for (const one of [bar, dock]) $("content").style.setProperty(`--${one.id}`,
    (matchMedia("(min-width: 68rem)").matches && one === dock ? 0 : one.offsetHeight) + "px"); });
  clear.observe(bar);
  clear.observe(dock);
  let wide = innerWidth;
  addEventListener("resize", debounce(200, () => { if (innerWidth !== wide) { [wide, room] = [innerWidth, null]; refresh(); } }));

  // ---- The runtime works faster what it has worked often: it is exercised while nobody asks, until that gains nothing or a hand moves.
  const warm = async name => {
    const logs = {}, path = state.marks?.path, unit = path?.endsWith(".knee") ? " bar" : "", slides = [[path || "", "bar"]];
    const limit = (await quick.ask("warm", { do: "car", ...asked(), logs, slides }))?.marks?.safe?.at;
    let before = Infinity, latest = 0;
    for (let i = 1; i <= WARMING && !state.moved; i++) {
      const began = performance.now(), near = limit && (limit * (0.7 + 0.25 * i / WARMING)).toFixed(3) + unit;
      const set = [limit ? [path, near] : ["name", "warm " + i]];
      await Promise.all([quick.ask("warm", { do: "figure", name, ...asked(), logs, set, slides }),
        beside("exercise").ask("exercise", { do: "car", ...asked(), logs, set, slides })]);
      latest += performance.now() - began;
      if (i % 16 > 0) continue;
      if (latest > 0.95 * before) return;
      [before, latest] = [latest, 0];
    }
  };

  // ---- Begin.
  const second = async () => {
    const desk = startDesk();
    await desk.ready;
    slow = desk;
    globalThis.bbLive = slow; // what scripts and tests may ask: bbLive.ask(name, request)
    document.documentElement.dataset.second = "yes";
    restNow();
  };
  const begin = async () => {
    const began = performance.now(), linked = await fromLink(), kept = bbDesk.kept();
    if (kept) {
      state.cars = kept.cars.slice(0, NAMES.length).map(({ name, text, logs, typed }) =>
        ({ ...fresh(name, text, logs), ...(typed && { typed }) }));
      state.at = Math.min(kept.at || 0, state.cars.length - 1);
      if (kept.page === page) state.units = kept.units === "us" ? "us" : "si";
      for (const one of ["bench", "parts", "targets"]) state[one] = String(kept[one] || state[one]);
    }
    $("live-units").value = state.units;
    // A page that was written anew since, for this car or another, opens with what it was written for; what was kept stands beside it.
    if (kept ? kept.page !== page : !linked) takeIn(written.text, written.logs, "This page was written anew");
    takeLink(linked);
    setups();

    // What was worked out when the page was written stands until the calculation is ready, which takes a second or two.
    const known = JSON.parse(await unpack(JSON.parse($("live-known").textContent))), { classes, figures } = known.begin;
    const choices = (what, names, shown) => $("live-begin").append(...names.map(name =>
      make("option", { value: `${what}:${name}` }, shown(name))));
    for (const { tab, names } of figures) {
      const place = $("live-" + tab).querySelector(".bb-pictures");
      place.append(...names.map(name => make("figure", { class: "bb-figure", "data-figure": name, "aria-busy": "true" })));
    }
    choices("new", classes, name => `New: ${name}`);
    const fitted = Object.keys(car().logs).length > 0;
    const same = what => JSON.stringify(what(car())) === JSON.stringify(what(written));
    const isKnown = state.units === written.units && same(one => [one.text, one.logs]);
    if (isKnown) {
      putForm(known.form, written.text);
      tell(known.car);
      if (known.car.problems.length > 0) turn("car");
      else $("live-balance").querySelector("figure").innerHTML = known.figure.html;
      dockFirst();
      if (fitted) told = { now: stateNow(), reply: known.car };
    }
    if (!heard(await quick.ready)) return;
    if (!isKnown) await drawForm();
    if (fitted) await second();
    await show(state.tab);
    if (told.reply?.problems.length > 0 && state.tab === "balance") await show("car");
    document.documentElement.dataset.live = String(Math.round(performance.now() - began));
    choices("demo", heard(await quick.ask("demos", { do: "demos" }))?.demos || [],
      name => `Invented car: ${name.replaceAll("-", " ")}`);
    if (!fitted) await second();
    await warm(figures[0].names[0]);
    document.documentElement.dataset.warm = "yes";
  };
  begin();
})();
