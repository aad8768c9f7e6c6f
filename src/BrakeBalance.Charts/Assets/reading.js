// Reads values from figures where the pointer, a finger or the arrow keys are: off the drawn marks, against the drawn ticks.
(() => {
  "use strict";
  if (globalThis.bbReading) return;
  globalThis.bbReading = true;
  const NEAR = 24, STEP = 4, HINT = "Arrow keys: left and right along a line, up and down to the next one.";
  const known = new WeakMap(), element = (tag, name) => Object.assign(document.createElement(tag), { className: name });
  const box = element("div", "bb-read"), spot = element("i", "bb-read-spot");
  // 12345.6 as the publisher writes it; what stands between thousands and before decimals follows.
  const planOf = frame => {
    const { read, number } = frame.closest("figure").querySelector("[data-read]").dataset;
    return { ...JSON.parse(read), number: (number || "12345.6").match(/^12(\D?)345(\D)6$/).slice(1) };
  };
  const middle = (line, axis) => (Number(line.getAttribute(axis + 1)) + Number(line.getAttribute(axis + 2))) / 2;
  const corners = path => path.getAttribute("d").match(/-?[\d.]+ -?[\d.]+/g).map(pair => pair.split(" ").map(Number));

  const number = (words, [group, point]) => Number(words.replace("−", "-").replaceAll(group, "").replace(point, "."));
  const written = (words, [group, point]) => words.replace(/(\d+)\.?(\d*)/, (_, whole, part) =>
    (whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, group) : whole) + (part && point + part));
  // From a place on the drawing to the number of an axis, by its outermost ticks.
  const scale = (svg, axis, format) => {
    const group = svg.querySelector(`g[id$='-axis-${axis}']`), lines = group.querySelectorAll("line");
    const ticks = [...group.querySelectorAll("text")].map((text, i) => ({
      value: number(text.textContent, format), at: lines[i] ? middle(lines[i], axis) : NaN }));
    const low = ticks[0], high = ticks.at(-1);
    return at => low.value + (at - low.at) * (high.value - low.value) / (high.at - low.at);
  };
  // As running text rounds: a pure number keeps its last zero.
  const text = ([, unit, step], value, format) => {
    const decimals = step.toString().split(".")[1]?.length || 0, shown = (Math.round(value / step) * step).toFixed(decimals);
    const short = unit || !decimals ? String(Number(shown)) : shown;
    return written(short.replace(/^-0(\.0*)?$/, "0$1").replace("-", "−"), format) + (unit && "\u00a0" + unit);
  };

  const dots = (kind, group) => {
    const all = name => [...group.querySelectorAll(name)];
    if (kind === "line") return all("path").flatMap(path => corners(path).flatMap((to, i, places) => {
      const from = places[i - 1] || to, parts = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP));
      return Array.from({ length: parts }, (_, k) => from.map((one, j) => one + (to[j] - one) * (k + 1) / parts));
    }));
    if (kind === "across") return all("line").map(line => [middle(line, "x"), middle(line, "y")]);
    if (kind === "bar") return all("path[fill-opacity]").map(path => {
      const [[left, foot], , [right, top]] = corners(path);
      return Object.assign([(left + right) / 2, top], { half: Math.abs(right - left) / 2, foot });
    });
    if (kind !== "mark") return [];
    const crosses = all("line").filter((line, i, lines) => lines[i + 1] && middle(line, "x") === middle(lines[i + 1], "x")
      && middle(line, "y") === middle(lines[i + 1], "y"));
    return [...all("circle, path").map(mark => {
      const { x, y, width, height } = mark.getBBox(), isTriangle = mark.getAttribute("d")?.match(/[ML]/g).length === 3;
      return [x + width / 2, y + height * (isTriangle ? 4 / 7 : 1 / 2)];
    }), ...crosses.map(line => [middle(line, "x"), middle(line, "y")])];
  };
  const look = (frame, svg) => {
    if (known.has(svg)) return known.get(svg);
    const plan = planOf(frame), format = plan.number, groups = svg.querySelector("g[id$='-layers']").children;
    const upright = [...svg.querySelectorAll("g[id$='-frame'] line")].at(-1), of = name => Number(upright.getAttribute(name));
    const left = of("x1"), right = Number(svg.querySelector("g[id$='-frame'] line").getAttribute("x2"));
    const isDrawn = ([x, y]) => x > left - 1 && x < right + 1 && y > of("y1") - 1 && y < of("y2") + 1; // the rest is clipped
    const names = plan.x[3], y = scale(svg, "y", format);
    const x = names ? at => Math.floor((at - left) / (right - left) * names.length) : scale(svg, "x", format);
    const sayX = at => `${plan.x[0]} ${text(plan.x, x(at), format)}`;
    const sayY = at => `${plan.y[0]} ${text(plan.y, y(at), format)}`;
    const layers = plan.layers.map(([kind, name, more], i) =>
      ({ kind, name, more, group: groups[i], dots: dots(kind, groups[i]).filter(dot => kind === "bar" || isDrawn(dot)) }));
    const words = ({ kind, name, group }, dot) => {
      if (kind === "across") return [name, isUpright(group) ? !names && sayX(dot[0]) : sayY(dot[1])];
      const height = kind === "bar" ? `${plan.y[0]} ${text(plan.y, y(dot[1]) - y(dot.foot), format)}` : sayY(dot[1]);
      return [name, names ? names[x(dot[0])] || "" : sayX(dot[0]), height];
    };
    const found = { svg, layers: layers.filter(layer => layer.dots.length), areas: layers.filter(layer => !layer.dots.length), words,
      here: (at, area) => [area, sayX(at[0]), sayY(at[1])] };
    known.set(svg, found);
    return found;
  };

  const hide = () => { box.remove(); spot.remove(); };
  const put = (frame, svg, at, words, spoken) => {
    const place = new DOMPoint(...at).matrixTransform(svg.getScreenCTM()), around = frame.getBoundingClientRect();
    const left = place.x - around.left - frame.clientLeft, top = place.y - around.top - frame.clientTop;
    box.setAttribute("aria-live", spoken ? "polite" : "off");
    box.replaceChildren(...words.filter(Boolean).map((line, i) => Object.assign(document.createElement(i ? "span" : "b"),
      { textContent: i ? line : line.replace(/^[a-z](?=[a-z])/, first => first.toUpperCase()) })));
    if (box.parentNode !== frame) frame.append(spot, box);
    Object.assign(spot.style, { left: left + "px", top: top + "px" });
    const wide = left > frame.clientWidth / 2 ? left - 14 - box.offsetWidth : left + 14;
    box.style.left = Math.max(2, Math.min(wide, frame.clientWidth - box.offsetWidth - 2)) + "px";
    box.style.top = Math.max(2, Math.min(top - 14 - box.offsetHeight, frame.clientHeight - box.offsetHeight - 2)) + "px";
  };
  // A bar is near where it stands, a line across all along, a marker before the line that it lies on.
  const isUpright = group => group.querySelector("line").getAttribute("x1") === group.querySelector("line").getAttribute("x2");
  const away = ({ kind, group }, dot, at) => {
    const [x, y] = [Math.abs(dot[0] - at.x), Math.abs(dot[1] - at.y)];
    const [high, low] = [dot[1], dot.foot].sort((one, other) => one - other);
    if (kind === "bar") return Math.hypot(Math.max(0, x - dot.half), Math.max(0, high - at.y, at.y - low));
    return kind === "across" ? (isUpright(group) ? x : y) + 8 : Math.hypot(x, y) - (kind === "mark" ? 6 : 0);
  };
  const point = (frame, event) => {
    const svg = frame.querySelector("svg"), { layers, areas, words, here } = look(frame, svg);
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    const within = areas.flatMap(({ kind, name, more, group }) => {
      const parts = [...group.querySelectorAll(kind === "heat" ? "rect" : "path[fill-opacity]")];
      const part = parts.findIndex(one => one.isPointInFill(at));
      return part < 0 ? [] : [more ? more[part] : name];
    });
    let best = null, least = within.length ? NEAR : Infinity;
    for (const layer of layers) for (const dot of layer.dots) {
      const one = away(layer, dot, at);
      if (one < least) [least, best] = [one, [layer, dot]];
    }
    if (best) put(frame, svg, best[0].kind === "across" ? [at.x, at.y] : best[1], words(...best));
    else if (within.length) put(frame, svg, [at.x, at.y], here([at.x, at.y], within.at(-1)));
  };

  const reach = () => document.querySelectorAll("figure:has([data-read]) .bb-static:not([tabindex])").forEach(frame => {
    frame.tabIndex = 0;
    frame.setAttribute("role", "group");
    frame.setAttribute("aria-label", "Values of the figure. " + HINT);
  });
  const frameOf = event => event.target.closest?.(".bb-static[tabindex]");
  const follow = event => {
    const frame = frameOf(event);
    if (frame) point(frame, event); else if (!box.parentNode?.matches(":focus-visible")) hide();
  };
  document.addEventListener("pointermove", follow, { passive: true });
  document.addEventListener("pointerdown", follow, { passive: true });
  document.addEventListener("pointercancel", hide);
  let layer = 0, place = 0;
  const key = (frame, event) => {
    const { svg, layers, words } = look(frame, frame.querySelector("svg")), arrow = event.key?.match(/^Arrow(Left|Right|Up|Down)$/)?.[1];
    if (event.key === "Escape") hide();
    if (layers.length === 0 || (event.key && !arrow)) return;
    const sideways = arrow === "Left" ? -1 : arrow === "Right" ? 1 : 0, upwards = arrow === "Up" ? 1 : arrow === "Down" ? -1 : 0;
    if (!arrow) layer = 0;
    layer = (layer + upwards + layers.length) % layers.length;
    const now = layers[layer], last = now.dots.length - 1;
    place = sideways ? Math.max(0, Math.min(last, place + sideways * (now.kind === "line" ? 3 : 1)))
      : Math.round(last / (now.kind === "line" ? 2 : 1));
    put(frame, svg, now.dots[place], [...words(now, now.dots[place]), arrow ? "" : HINT], true);
    if (arrow) event.preventDefault();
  };
  document.addEventListener("focusin", event => { if (frameOf(event)?.matches(":focus-visible")) key(frameOf(event), event); });
  document.addEventListener("focusout", event => { if (box.parentNode === event.target) hide(); });
  document.addEventListener("keydown", event => { if (event.target.matches?.(".bb-static[tabindex]")) key(event.target, event); });
  const begin = () => {
    reach();
    new MutationObserver(reach).observe(document.body, { childList: true, subtree: true });
  };
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", begin); else begin();
})();
