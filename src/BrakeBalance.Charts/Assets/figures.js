// Draws the live charts of a page and moves its explorables. Needs no network; without Plotly the static drawings stay.
(() => {
  'use strict';
  const DARK = __BB_COLOURS__;
  const NARROW = 560, SETTLE = 450;
  const plotly = () => window.Plotly;
  const reduced = window.matchMedia('(prefers-reduced-motion: reduce)');
  const darkQuery = window.matchMedia('(prefers-color-scheme: dark)');
  const isDark = () => {
    const chosen = document.documentElement.dataset.theme;
    return chosen === 'dark' || (chosen !== 'light' && darkQuery.matches);
  };

  // A copy of a value; for dark pages with each colour of the light theme exchanged.
  const copy = (value, dark) => {
    if (typeof value === 'string') {
      return dark && value[0] === '#' ? (DARK[value.slice(0, 7)] ? DARK[value.slice(0, 7)] + value.slice(7) : value) : value;
    }
    if (Array.isArray(value)) return typeof value[0] === 'number' ? value : value.map(item => copy(item, dark));
    if (value && typeof value === 'object') {
      const result = {};
      for (const key of Object.keys(value)) result[key] = copy(value[key], dark);
      return result;
    }
    return value;
  };

  const chartOf = (state, width, dark) => {
    const sized = width < NARROW ? state.narrow : state.wide;
    const { keyed, ...parts } = sized;
    const data = copy(state.data.filter(Boolean), dark);
    for (const trace of data) if (keyed.includes(trace.name)) trace.showlegend = true;
    const layout = { ...copy(state.layout, dark), ...copy(parts, dark) };
    layout.annotations = layout.annotations.filter(Boolean);
    return { data, layout, config: { displayModeBar: false, responsive: true, scrollZoom: false } };
  };

  // One figure element and its present state.
  const figures = new Map();
  const register = state => {
    const element = document.getElementById(state.id);
    if (!element) return null;
    const figure = {
      state, element, live: element.querySelector('.bb-live'), still: element.querySelector('.bb-static'),
      started: false, drawnNarrow: null,
      draw() {
        if (!plotly() || !figure.started) return;
        element.classList.add('bb-on');
        const width = figure.live.clientWidth || 620;
        figure.drawnNarrow = width < NARROW;
        const chart = chartOf(figure.state, width, isDark());
        plotly().react(figure.live, chart.data, chart.layout, chart.config);
      },
      start() {
        if (figure.started) return;
        figure.started = true;
        figure.draw();
      },
    };
    figures.set(element, figure);
    return figure;
  };

  const seen = 'IntersectionObserver' in window
    ? new IntersectionObserver(entries => entries.forEach(entry => {
        if (entry.isIntersecting) {
          seen.unobserve(entry.target);
          figures.get(entry.target).start();
        }
      }), { rootMargin: '200px' })
    : null;

  const redrawAll = () => figures.forEach(figure => figure.draw());
  let resizing = 0;
  window.addEventListener('resize', () => {
    clearTimeout(resizing);
    resizing = setTimeout(() => figures.forEach(figure => {
      if (figure.started && (figure.live.clientWidth < NARROW) !== figure.drawnNarrow) figure.draw();
    }), 150);
  });
  darkQuery.addEventListener('change', redrawAll);
  new MutationObserver(redrawAll).observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });

  const put = (root, selector, text) => {
    const element = root.querySelector(selector);
    if (element && element.textContent !== text) element.textContent = text;
  };

  // A cell that a spreadsheet would take for a formula begins with an apostrophe, as in the files.
  const csvCell = text => {
    const formula = /^[=+\-@\t\r]/.test(text) && !/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(text);
    const safe = formula ? "'" + text : text;
    return /[",;\n\r]/.test(safe) ? '"' + safe.replaceAll('"', '""') + '"' : safe;
  };
  const csvOf = table => [table.columns, ...table.rows[0].map((_, i) => table.rows.map(column => column[i]))]
    .map(row => row.map(csvCell).join(',')).join('\n') + '\n';

  // The words and the table of a figure follow its state.
  const words = figure => {
    const { state, element } = figure;
    if (!state.table) return;
    put(element, '.bb-title', state.title);
    put(element, '.bb-caption', state.caption);
    put(element, '#' + state.id + '-long', state.long);
    figure.live.setAttribute('aria-label', state.alt);
    const body = element.querySelector('tbody');
    const rows = state.table.rows, count = rows[0].length;
    while (body.rows.length > count) body.deleteRow(-1);
    while (body.rows.length < count) {
      const row = body.insertRow();
      rows.forEach((_, c) => { row.insertCell().className = state.table.numeric[c] ? 'bb-number' : ''; });
    }
    rows.forEach((column, c) => column.forEach((cell, r) => {
      const target = body.rows[r].cells[c];
      if (target.textContent !== cell) target.textContent = cell;
    }));
    const link = element.querySelector('.bb-csv');
    if (link) link.href = 'data:text/csv;charset=utf-8,' + encodeURIComponent(csvOf(state.table));
  };

  // The static drawing follows after a while, so that paper shows what the screen shows.
  const still = (figure, text) => {
    if (!plotly() || !figure.started) return Promise.resolve();
    const chart = chartOf(figure.state, 720, false);
    const height = chart.layout.height;
    const drawn = { data: chart.data, layout: { ...chart.layout, width: 720 }, config: { staticPlot: true } };
    return plotly().toImage(drawn, { format: 'svg', width: 720, height })
      .then(url => {
        const image = document.createElement('img');
        image.src = url;
        image.alt = figure.state.alt;
        image.width = 720;
        image.height = height;
        const note = document.createElement('p');
        note.className = 'bb-state';
        note.textContent = text;
        figure.still.replaceChildren(image, note);
      });
  };

  const setAt = (root, path, value) => {
    let target = root;
    for (let i = 0; i < path.length - 1; i++) target = target[path[i]];
    target[path[path.length - 1]] = value;
  };

  const explore = (root, json) => {
    const states = json.frame.figures, own = states.map(register).filter(Boolean);
    const inputs = json.controls.map(control => root.querySelector('#' + json.id + '-' + control.id));
    const outputs = json.controls.map(control => root.querySelector('#' + json.id + '-' + control.id + '-value'));
    const readouts = [...root.querySelectorAll('.bb-readout dd')], verdict = root.querySelector('.bb-verdict');
    let frame = json.start, queued = false, settling = 0;
    root.querySelector('.bb-controls').hidden = false;

    const shownText = settings =>
      'Shown: ' + json.controls.map((control, c) => control.label + ' ' + control.texts[settings[c]]).join(', ') + '.';
    const show = () => {
      queued = false;
      const settings = inputs.map(input => Number(input.value));
      const index = settings.reduce((sum, setting, c) => sum * json.controls[c].texts.length + setting, 0);
      json.controls.forEach((control, c) => {
        const text = control.texts[Number(inputs[c].value)];
        outputs[c].textContent = text;
        if (inputs[c].tagName === 'INPUT') inputs[c].setAttribute('aria-valuetext', text);
      });
      if (index === frame) return;
      frame = index;
      // Each path lists its values over the settings of those controls that matter to it.
      json.paths.forEach(path => {
        const at = path.c.reduce((sum, c) => sum * json.controls[c].texts.length + settings[c], 0);
        setAt(json.frame, path.p, json.pool[path.v[at]]);
      });
      json.frame.readouts.forEach((value, r) => { if (readouts[r].textContent !== value) readouts[r].textContent = value; });
      if (verdict) {
        if (verdict.textContent !== json.frame.verdict) verdict.textContent = json.frame.verdict;
        verdict.dataset.kind = json.frame.kind;
      }
      own.forEach(figure => { words(figure); figure.draw(); });
      clearTimeout(settling);
      settling = setTimeout(() => own.forEach(figure => still(figure, shownText(settings))), SETTLE);
      root.dataset.frame = String(index);
    };
    const queue = () => {
      if (!queued) {
        queued = true;
        requestAnimationFrame(show);
      }
    };

    json.controls.forEach((control, c) => {
      inputs[c].addEventListener('input', queue);
      inputs[c].addEventListener('change', queue);
      if (!control.play) return;
      const button = root.querySelector('#' + json.id + '-' + control.id + '-play');
      const last = control.texts.length - 1;
      let timer = 0;
      const stop = () => {
        clearInterval(timer);
        timer = 0;
        button.textContent = reduced.matches ? 'Next step' : 'Play';
        outputs[c].setAttribute('aria-live', 'polite');
      };
      const step = () => {
        const value = Number(inputs[c].value);
        if (timer && value >= last) return stop();
        inputs[c].value = String(value >= last ? 0 : value + 1);
        queue();
      };
      button.addEventListener('click', () => {
        if (timer) return stop();
        if (reduced.matches) return step();
        if (Number(inputs[c].value) >= last) {
          inputs[c].value = '0';
          queue();
        }
        button.textContent = 'Pause';
        outputs[c].setAttribute('aria-live', 'off');
        timer = setInterval(step, control.play);
      });
      inputs[c].addEventListener('pointerdown', () => { if (timer) stop(); });
      stop();
    });
    // A reloaded page may come back with the controls where the reader left them.
    json.controls.forEach((control, c) => {
      const chosen = inputs[c].tagName === 'INPUT' || inputs[c].selectedIndex >= 0;
      if (chosen) outputs[c].textContent = control.texts[Number(inputs[c].value)];
    });
    queue();
    return own;
  };

  const begin = () => {
    document.querySelectorAll('script.bb-json').forEach(element => {
      if (element.dataset.bbDone) return;
      element.dataset.bbDone = 'yes';
      const json = JSON.parse(element.textContent);
      const own = json.controls ? explore(document.getElementById(json.id), json) : json.figures.map(register).filter(Boolean);
      own.forEach(figure => seen ? seen.observe(figure.element) : figure.start());
    });
  };
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', begin);
  else begin();
})();
