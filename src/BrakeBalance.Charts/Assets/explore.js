// Moves the explorables of a page: each state is worked out by the calculation assembly when it is asked for.
(() => {
  "use strict";
  const reduced = matchMedia("(prefers-reduced-motion: reduce)");
  let started = null;
  const desk = () => started ??= bbDesk.start();
  const own = () => {
    const kept = bbDesk.kept(), car = kept?.cars[kept.at || 0];
    return car ? { text: car.text, logs: car.logs || {}, set: [], known: null } : null;
  };

  // What a figure asks; one that is like another above it says only where it differs.
  const asks = root => {
    const { like, ...own } = JSON.parse(root.querySelector("script.bb-ask").textContent);
    return like ? { ...asks(document.getElementById(like)), ...own } : own;
  };
  const explore = root => {
    const pageCar = asks(root);
    const shown = root.querySelector(".bb-shown"), said = document.createElement("p");
    said.className = "bb-verdict";
    said.setAttribute("role", "status");
    said.dataset.kind = "caution";
    said.hidden = true;
    root.insertBefore(said, shown);
    let request = pageCar, serial = 0;
    const form = () => root.querySelector(".bb-controls");
    const inputs = () => [...form().querySelectorAll("input, select")];

    const put = (reply, mine) => {
      if (!reply || mine !== serial) return false;
      shown.removeAttribute("aria-busy");
      said.hidden = !reply.fault;
      said.textContent = reply.fault ? "This could not be worked out: " + reply.fault : "";
      if (reply.fault) return false;
      const open = [...shown.querySelectorAll("details")].map(one => one.open);
      shown.innerHTML = reply.html;
      [...shown.querySelectorAll("details")].forEach((one, i) => { one.open = Boolean(open[i]); });
      root.dataset.moved = String(Number(root.dataset.moved || 0) + 1);
      return true;
    };
    const ask = async at => {
      const mine = ++serial;
      shown.setAttribute("aria-busy", "true");
      const width = Math.floor(Math.max(280, shown.querySelector(".bb-figure")?.clientWidth || root.clientWidth));
      return [await desk().ask(request.id, { ...request, width, ...(at ? { at } : {}) }), mine];
    };
    const move = async () => put(...await ask(inputs().map(input => Number(input.value))));

    const bind = () => {
      form().hidden = false;
      for (const input of inputs()) {
        const output = document.getElementById(input.id + "-value"), texts = input.dataset.texts && JSON.parse(input.dataset.texts);
        const word = () => {
          if (!texts) return;
          output.textContent = texts[Number(input.value)];
          input.setAttribute("aria-valuetext", texts[Number(input.value)]);
        };
        input.addEventListener("input", () => { word(); move(); });
        word(); // a page that is loaded again may come back with the controls where the reader left them
        const button = input.parentElement.querySelector("[data-play]");
        if (button) play(input, button, output, word);
      }
    };

    // The next moment is asked for when the last one has been drawn.
    const play = (input, button, output, word) => {
      let going = false;
      const stop = () => {
        going = false;
        button.textContent = reduced.matches ? "Next step" : "Play";
        output.setAttribute("aria-live", "polite");
      };
      const step = async () => {
        input.value = String(Number(input.value) >= Number(input.max) ? 0 : Number(input.value) + 1);
        word();
        await move();
      };
      button.addEventListener("click", async () => {
        if (going) { stop(); return; }
        if (reduced.matches) { await step(); return; }
        if (Number(input.value) >= Number(input.max)) input.value = "0";
        going = true;
        button.textContent = "Pause";
        output.setAttribute("aria-live", "off");
        while (going && Number(input.value) < Number(input.max)) {
          const pause = new Promise(resolve => setTimeout(resolve, Number(button.dataset.play)));
          await step();
          await pause;
        }
        stop();
      });
      input.addEventListener("pointerdown", stop);
      stop();
    };

    // A reader who has entered a car on this device may see it here.
    const offer = () => {
      const mine = pageCar.text && own();
      if (!mine || mine.text === pageCar.text) return;
      const button = document.createElement("button");
      button.type = "button";
      button.className = "bb-own";
      const word = () => { button.textContent = request === pageCar ? "Show my own car here" : "Show the car of this page"; };
      button.addEventListener("click", async () => {
        const before = request;
        request = request === pageCar ? { ...pageCar, ...mine } : pageCar;
        const [reply, at] = await ask();
        if (!put(reply, at)) { request = before; return; }
        form().outerHTML = reply.controls;
        bind();
        word();
      });
      word();
      root.prepend(button);
    };

    // A lesson shows the car of a student's sheet: class code and student number stand at its top.
    const offerSheet = () => {
      if (pageCar.name !== "lesson") return false;
      const kept = (() => { try { return JSON.parse(localStorage.getItem("bb-class")) || {}; } catch { return {}; } })();
      const sheet = document.createElement("form");
      sheet.className = "bb-ask-car";
      sheet.noValidate = true; // what is wrong is said below the figure, where it stays
      sheet.innerHTML = '<label>Class code '
        + '<input name="code" size="9" required minlength="8" maxlength="8" autocomplete="off" spellcheck="false"></label> '
        + '<label>Student number <input name="student" type="number" required min="1" max="9999"></label> '
        + '<button>Show the car of my sheet</button>';
      const { code, student } = sheet.elements;
      code.value = kept.code || "";
      student.value = kept.student || "";
      const still = () => " The figure still shows "
        + (request.code ? `the car of ${request.code}, student ${request.student}.` : "the car of this page.");
      const show = async () => {
        const asked = !code.value.trim() ? "A class code has eight letters and digits"
          : student.checkValidity() ? "" : "A student number is a whole number from 1 to 9999";
        if (asked) {
          said.hidden = false;
          said.textContent = asked + ", as at the top of the sheet." + still();
          return;
        }
        const before = request;
        request = { ...pageCar, code: code.value.trim(), student: Number(student.value) };
        const [reply, at] = await ask();
        if (!put(reply, at)) {
          request = before;
          if (reply?.fault) said.textContent += still();
          return;
        }
        try { localStorage.setItem("bb-class", JSON.stringify({ code: request.code, student: request.student })); } catch {}
        form().outerHTML = reply.controls;
        bind();
      };
      sheet.addEventListener("submit", event => { event.preventDefault(); show(); });
      root.append(sheet); // below, so that finding, picture and control stay on the first screen
      const isKept = Boolean(kept.code && kept.student);
      if (isKept) show();
      return isKept;
    };

    bind();
    offer();
    if (!offerSheet() && inputs().some(input => input.tagName === "INPUT" ? input.value !== input.defaultValue
      : !input.options[input.selectedIndex]?.defaultSelected)) move();
  };

  const begin = () => {
    const roots = [...document.querySelectorAll(".bb-explorable")].filter(root => root.querySelector("script.bb-ask"));
    roots.forEach(explore);
    // The assembly starts, and works out what is shown once more, when the reader comes near: the first move need not wait for either.
    const near = new IntersectionObserver(entries => entries.filter(entry => entry.isIntersecting).forEach(async ({ target }) => {
      near.unobserve(target);
      await desk().ask(target.id + " warm", asks(target));
      document.documentElement.dataset.live = "yes";
      // A reader who is there already, or wants less motion, is left alone.
      const button = target.querySelector("[data-itself]"), place = button?.getBoundingClientRect();
      if (!button || reduced.matches || target.dataset.moved || target.contains(document.activeElement)) return;
      if (place.top < 0 || place.bottom > innerHeight) return;
      button.parentElement.querySelector("input").value = "0";
      button.click();
    }), { rootMargin: "600px" });
    roots.forEach(root => near.observe(root));
  };
  // A cell that a reader has run brings explorables of its own.
  addEventListener("bb-shown", event => [...event.detail.querySelectorAll(".bb-explorable")].forEach(explore));
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", begin); else begin();
})();
