"use strict";
(() => {
  const main = document.querySelector("main");
  const steps = [...main.querySelectorAll("li.step")];
  const hand = document.getElementById("hand");
  const panel = (name) => document.getElementById("hand-" + name);
  const kept = "walewise sheet " + main.dataset.sheet;
  let at = 0; // the step in hand
  let moved = false; // since the page was opened

  const text = (step, name) => step.querySelector("." + name)?.textContent ?? "";
  const box = (i) => steps[i].querySelector("input");
  const allDone = () => steps.every((_, i) => box(i).checked);

  // The first step after the one in hand that is not done, else the first of all.
  function nextOpen() {
    for (let n = 1; n < steps.length; n++) {
      const i = (at + n) % steps.length;
      if (!box(i).checked) return i;
    }
    return -1;
  }

  // Where a step begins: the reading, what it is a reading of, and the side.
  function reading(step) {
    const number = step.querySelector(".at b")?.textContent ?? "";
    const side = step.querySelector(".at em")?.textContent ?? "";
    return {
      number,
      unit: step.querySelector(".at i")?.textContent ?? (number && main.dataset.unit),
      side: side && main.dataset.side + side,
    };
  }

  const where = (step) => step.parentElement.dataset.where;

  // What is said between the steps, before one or after it, in the order of the page.
  function beside(step, next, kind) {
    const said = [];
    for (let li = step[next]; li?.classList.contains(kind); li = li[next]) said.push(li.textContent);
    return next === "previousElementSibling" ? said.reverse() : said;
  }

  // The first sentence, or as much of it as is short.
  function short(said) {
    const sentence = said.match(/^.*?\.(?= |$)/)?.[0] ?? said;
    const most = 80;
    return sentence.length <= most ? sentence : sentence.slice(0, sentence.lastIndexOf(" ", most)) + " …";
  }

  function begin(step) {
    const { number, unit, side } = reading(step);
    return [[unit, number].filter(Boolean).join(" "), side].filter(Boolean).join(", ");
  }

  function next() {
    const i = nextOpen();
    if (i < 0) return "Next: nothing, this is the last step.";
    const place = where(steps[i]) === where(steps[at]) ? "" : where(steps[i]);
    return "Next: " + [place, text(steps[i], "at"), short(text(steps[i], "do"))].filter(Boolean).join(": ");
  }

  // Sets a text in which no line ends within a span of needles or a wrap.
  function put(node, said) {
    node.replaceChildren(...said.split(/((?:\bwrap )?\b[LR]\d+(?:-[LR]\d+)?|\bw&t\b)/i).map((part, i) => {
      if (i % 2 === 0) return part;
      const span = document.createElement("span");
      span.className = "needles";
      span.textContent = part;
      return span;
    }));
  }

  function fill(said) {
    for (const name of ["where", "unit", "counter", "to", "side", "end", "do", "after", "check", "next", "left"]) {
      put(panel(name), said[name] ?? "");
      panel(name).hidden = !said[name];
    }
    panel("reading").hidden = !said.counter;
    panel("sides").hidden = !said.side && !said.end;
    const notes = said.notes ?? [];
    panel("note").hidden = notes.length === 0;
    panel("note").replaceChildren(...notes.map((text) => {
      const note = document.createElement("p");
      put(note, text);
      return note;
    }));
    panel("text").scrollTop = 0;
  }

  // Says that the text goes on below its window.
  function tellMore() {
    const { scrollHeight, clientHeight, scrollTop } = panel("text");
    const little = 4; // less than a line, such as the space below the last one
    hand.classList.toggle("more", scrollHeight - clientHeight - scrollTop > little);
  }

  function show() {
    const done = allDone();
    for (const step of steps) step.removeAttribute("aria-current");
    panel("on").setAttribute("aria-disabled", done);
    panel("back").setAttribute("aria-disabled", !done && at === 0);
    if (done) {
      fill({ where: main.querySelector("h1").textContent, do: `All ${steps.length} steps are done.` });
      return;
    }
    const step = steps[at];
    step.setAttribute("aria-current", "step");
    const { number, unit, side } = reading(step);
    const result = text(step, "after");
    fill({
      where: `${where(step)}: step ${at + 1} of ${steps.length}`,
      notes: beside(step, "previousElementSibling", "note"),
      unit, counter: number, side,
      to: step.dataset.to && "→ " + step.dataset.to,
      end: step.dataset.end && "ends at the " + step.dataset.end,
      do: text(step, "do"),
      after: result && result + ".",
      check: beside(step, "nextElementSibling", "check").join(" "),
      next: next(),
      left: step.dataset.left && "Rows left: " + step.dataset.left,
    });
  }

  function say() {
    const step = steps[at];
    const said = allDone()
      ? "All steps are done."
      : [`Step ${at + 1}`, begin(step), short(text(step, "do"))].filter(Boolean).join(": ");
    if (panel("said").textContent !== said) panel("said").textContent = said;
  }

  // Storage may be missing, full or forbidden; the page works all the same.
  function keep() {
    try {
      localStorage.setItem(kept, JSON.stringify({ at, done: steps.flatMap((_, i) => (box(i).checked ? [i] : [])) }));
    } catch {}
  }

  // Reports whether a place was kept.
  function recall() {
    try {
      const place = JSON.parse(localStorage.getItem(kept));
      const done = new Set(place.done);
      steps.forEach((_, i) => { box(i).checked = done.has(i); });
      if (Number.isInteger(place.at) && steps[place.at]) at = place.at;
      return true;
    } catch {
      return false;
    }
  }

  // Shows the place that was kept. Of a page that is a file some browsers show the storage as
  // empty for a moment after it was opened: look again, unless something is done by then.
  function resume(tries = 4) {
    const found = recall();
    show();
    if (found || tries === 0) return;
    setTimeout(() => { if (!moved) resume(tries - 1); }, 150);
  }

  // On a narrow screen the page keeps clear of the panel at its foot.
  function makeRoom() {
    document.documentElement.style.setProperty("--hand", hand.offsetHeight + "px");
    tellMore();
  }

  function changed(scroll) {
    moved = true;
    show();
    say();
    keep();
    makeRoom();
    if (scroll) steps[at].scrollIntoView({ block: "nearest" });
  }

  function goOn() {
    const i = nextOpen();
    if (i >= 0) at = i;
  }

  function done() {
    if (allDone()) return;
    box(at).checked = true;
    goOn();
    changed(true);
  }

  function back() {
    if (!allDone()) {
      if (at === 0) return;
      at--;
    }
    box(at).checked = false;
    changed(true);
  }

  // What the element that has the focus does itself with a key.
  function needs(target, key) {
    if (key === "Enter") return target.closest("a, button, summary");
    if (key === " ") return target.closest("button, summary, input");
    return key.startsWith("Arrow") && target.closest("[role=region]");
  }

  const keys = { Enter: done, " ": done, ArrowRight: done, ArrowLeft: back, Backspace: back };

  document.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || needs(event.target, event.key)) return;
    event.preventDefault();
    if (!event.repeat) act();
  });

  panel("on").addEventListener("click", done);
  panel("back").addEventListener("click", back);

  main.addEventListener("change", (event) => {
    const i = steps.findIndex((step) => step.contains(event.target));
    if (i < 0) return;
    if (!event.target.checked) at = i;
    else if (i === at) goOn();
    changed(false);
  });

  main.addEventListener("click", (event) => {
    const i = steps.findIndex((step) => "#" + step.id === event.target.closest("a.go")?.hash);
    if (i < 0) return;
    at = i;
    changed(false);
  });

  // The browser may have put boxes back as they were: what was kept counts.
  window.addEventListener("pageshow", () => resume());

  panel("text").addEventListener("scroll", tellMore, { passive: true });
  new ResizeObserver(makeRoom).observe(hand);
  for (const node of main.querySelectorAll("li.step .do, li.step .after")) put(node, node.textContent);
  hand.hidden = false;
  document.documentElement.classList.add("live");
  resume();
})();
