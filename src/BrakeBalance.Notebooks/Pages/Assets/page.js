(() => {
  "use strict";
  const root = document.documentElement;
  const darkQuery = matchMedia("(prefers-color-scheme: dark)");
  const isDark = () => (root.dataset.theme ? root.dataset.theme === "dark" : darkQuery.matches);

  // Theme. Storage may be refused for a page opened from disk: the choice then lasts as long as the page.
  const themeButton = document.getElementById("bb-theme");
  const nameTheme = () => {
    themeButton.textContent = isDark() ? "Light" : "Dark";
    themeButton.setAttribute("aria-label", isDark() ? "Light colours" : "Dark colours");
  };
  themeButton.addEventListener("click", () => {
    root.dataset.theme = isDark() ? "light" : "dark";
    try { localStorage.setItem("bb-theme", root.dataset.theme); } catch { /* the choice is not kept */ }
    nameTheme();
  });
  darkQuery.addEventListener("change", nameTheme);
  nameTheme();

  // Served by a web server, the pages can be installed and are kept for use without a network.
  if (location.protocol.startsWith("http")) {
    const link = document.createElement("link");
    link.rel = "manifest";
    link.href = "app.webmanifest";
    document.head.append(link);
    navigator.serviceWorker?.register("sw.js").catch(() => { /* a page that was passed on alone */ });
  }

  // The menu closes like any other: by Escape, and by a press anywhere else.
  const menu = document.querySelector(".bb-menu");
  addEventListener("keydown", event => {
    if (event.key !== "Escape" || !menu?.open) return;
    menu.open = false;
    menu.querySelector("summary").focus();
  });
  addEventListener("pointerdown", event => { if (menu && !menu.contains(event.target)) menu.open = false; });

  // The computation: all code at once, that of cells without output with it.
  const codeButton = document.getElementById("bb-code-all");
  codeButton?.addEventListener("click", () => {
    const show = codeButton.getAttribute("aria-pressed") !== "true";
    codeButton.setAttribute("aria-pressed", String(show));
    codeButton.textContent = show ? "Hide the computation" : "Show the computation";
    for (const details of document.querySelectorAll("details.bb-code")) details.open = show;
  });

  // Contents: folded where they would push the text off a small screen.
  const contents = document.querySelector(".bb-contents details");
  const wide = matchMedia("(min-width: 68rem)");
  const fold = () => { if (contents) contents.open = wide.matches; };
  wide.addEventListener("change", fold);
  fold();

  // Contents: the section in view.
  const entries = new Map();
  for (const link of document.querySelectorAll(".bb-contents a"))
    entries.set(document.getElementById(link.hash.slice(1)), link);
  if (entries.size > 0) {
    const mark = () => {
      let current = null;
      for (const [heading, link] of entries) {
        link.removeAttribute("aria-current");
        if (heading.getBoundingClientRect().top < innerHeight * 0.3) current = link;
      }
      current?.setAttribute("aria-current", "true");
    };
    let waiting = false;
    addEventListener("scroll", () => {
      if (waiting) return;
      waiting = true;
      requestAnimationFrame(() => { waiting = false; mark(); });
    }, { passive: true });
  }

  // Boxes that scroll sideways can be reached by keyboard.
  const reach = () => {
    for (const box of document.querySelectorAll(".bb-scroll:not(.bb-data *), .bb-scroll-x, .bb-equation, .bb-text, .bb-code pre")) {
      if (box.scrollWidth > box.clientWidth + 1) box.tabIndex = 0;
      else box.removeAttribute("tabindex");
    }
  };
  addEventListener("load", reach);
  addEventListener("resize", reach);
  document.addEventListener("toggle", reach, true);
})();
