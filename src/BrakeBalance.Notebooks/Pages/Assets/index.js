// Finds titles, headings and questions of all pages; their words stand in the page.
(() => {
  "use strict";
  const field = document.getElementById("bb-search"), form = field.form;
  const found = document.getElementById("bb-found"), results = document.getElementById("bb-results");
  const plain = text => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const places = JSON.parse(document.getElementById("bb-places").textContent)
    .map(([words, address, page]) => ({ words, address, page, key: plain(`${words} ${page}`), own: plain(words) }));
  form.hidden = false;
  form.addEventListener("submit", event => {
    event.preventDefault();
    results.querySelector("a")?.click();
  });

  field.addEventListener("input", () => {
    const asked = plain(field.value).split(/\s+/).filter(Boolean);
    const rank = place => asked.every(word => place.own.includes(word)) ? (place.page ? 1 : 0) : 2;
    const hits = asked.length === 0 ? [] : places.filter(place => asked.every(word => place.key.includes(word)))
      .sort((a, b) => rank(a) - rank(b));
    results.replaceChildren(...hits.slice(0, 12).map(({ words, address, page }) => {
      const item = document.createElement("li"), link = document.createElement("a"), where = document.createElement("small");
      link.href = address;
      link.textContent = words;
      where.textContent = page;
      item.append(link, " ", where);
      return item;
    }));
    found.textContent = asked.length === 0 ? "" : hits.length === 0 ? "Nothing found." :
      `${hits.length} found${hits.length > 12 ? ", the first 12 shown" : ""}.`;
  });

  // Up and down walk through the results.
  form.addEventListener("keydown", event => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!step) return;
    const stops = [field, ...results.querySelectorAll("a")], next = stops[stops.indexOf(document.activeElement) + step];
    if (!next) return;
    event.preventDefault();
    next.focus();
  });
})();
