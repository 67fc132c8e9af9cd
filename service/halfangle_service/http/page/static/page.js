// What the pages do beyond being read: search, copy, and try an operation. All else works without.
"use strict";

document.documentElement.classList.add("scripted");
for (const part of document.querySelectorAll(".origin")) part.textContent = location.origin;

// Copy ------------------------------------------------------------------------------------------
for (const button of document.querySelectorAll(".copy")) {
  if (!navigator.clipboard) break; // there only where the page came safely, or from this machine
  button.hidden = false;
  button.addEventListener("click", async () => {
    await navigator.clipboard.writeText(button.parentElement.querySelector("pre").textContent);
    button.textContent = "Copied";
    setTimeout(() => { button.textContent = "Copy"; }, 2000);
  });
}

// Search ----------------------------------------------------------------------------------------
const search = document.querySelector("form.search");
if (search) prepareSearch(search);

function prepareSearch(form) {
  const field = form.querySelector("input");
  const said = form.querySelector(".found");
  const entries = [...document.querySelectorAll(".entry")].map((element) => ({
    element,
    text: plain(`${element.textContent} ${element.dataset.words ?? ""}`),
  }));
  const sections = [...document.querySelectorAll("main section")];
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const first = entries.find((entry) => !entry.element.hidden)?.element;
    if (first && field.value.trim()) focus(first.querySelector("a") ?? first);
  });
  field.addEventListener("input", show);
  show();

  function show() {
    const words = plain(field.value).split(" ").filter(Boolean);
    let found = 0;
    for (const { element, text } of entries) {
      element.hidden = !words.every((word) => text.includes(word));
      found += element.hidden ? 0 : 1;
    }
    for (const section of sections) {
      section.hidden = words.length > 0 && !section.querySelector(".entry:not([hidden])");
    }
    said.textContent = words.length ? `${found || "No"} ${found === 1 ? "entry" : "entries"}` : "";
  }
}

// Names as they are written in requests, in addresses and in words are one.
function plain(text) {
  return text.toLowerCase().replace(/[\s._\-/]+/g, " ").trim();
}

function focus(element) {
  if (!element.matches("a")) element.tabIndex = -1;
  element.focus();
}

// Try it ----------------------------------------------------------------------------------------
const SEVERITIES = ["stop", "caution", "note"];
const form = document.querySelector("form.try");
if (form) prepareTry(form);

function prepareTry(form) {
  const outcome = document.querySelector(".outcome");
  const key = form.querySelector(".key input");
  key.value = sessionStorage.getItem("halfangle-key") ?? "";
  form.hidden = false;
  form.addEventListener("reset", () => outcome.replaceChildren());
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    outcome.replaceChildren(element("p", "Sending …"));
    try {
      outcome.replaceChildren(...(await sent()));
    } catch (error) {
      outcome.replaceChildren(element("p", `No answer came: ${error.message}`, "status stop"));
    }
  });

  async function sent() {
    // The second says that a script asks: else a browser would ask for the key in its own dialog.
    const headers = { "Content-Type": "application/json", "X-Requested-With": "fetch" };
    if (key.value) headers["X-API-Key"] = key.value;
    const answer = await fetch(form.dataset.path, {
      method: "POST", headers, body: form.querySelector("textarea").value,
    });
    if (answer.status === 401) form.querySelector(".key").hidden = false;
    else if (key.value) sessionStorage.setItem("halfangle-key", key.value);
    const body = await answer.json();
    const status = `${answer.status} ${answer.ok ? "answered" : body.title ?? "refused"}`;
    return [element("p", status, "status"), ...(answer.ok ? answered(body) : refused(body))];
  }
}

function answered(answer) {
  const rank = (one) => SEVERITIES.indexOf(one.severity);
  const advisories = [...answer.advisories].sort((a, b) => rank(a) - rank(b));
  const drawings = [];
  const result = JSON.stringify(answer.result, (_, value) => {
    if (typeof value !== "string" || !value.startsWith("<svg")) return value;
    drawings.push(drawing(value));
    return "<svg … the drawing above";
  }, 2);
  const list = element("ul", "", "advised");
  list.append(...advisories.map((one) => {
    const line = element("li", "", one.severity);
    line.append(element("strong", one.severity), ` ${one.code}: `, ...worded(one.message));
    return line;
  }));
  return [...(advisories.length ? [list] : []), ...drawings, element("pre", result)];
}

function refused(problem) {
  const list = element("ul", "");
  list.append(...(problem.errors ?? []).map((one) => {
    const line = element("li", "");
    line.append(element("code", one.pointer), " ", ...worded(one.message));
    return line;
  }));
  const detail = element("p", "");
  detail.append(...worded(problem.detail ?? ""));
  return [detail, list];
}

// A sentence, with the names between backticks as code.
function worded(sentence) {
  return sentence.split("`").map((part, place) => (place % 2 ? element("code", part) : part));
}

function drawing(svg) {
  const figure = element("figure", "");
  const image = element("img", "");
  image.alt = "Drawing in the answer";
  image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  figure.append(image);
  return figure;
}

function element(name, text, classes = "") {
  const made = document.createElement(name);
  made.textContent = text;
  if (classes) made.className = classes;
  return made;
}
