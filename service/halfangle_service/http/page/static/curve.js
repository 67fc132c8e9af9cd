// Plots an operation over a range of one of its numbers, as /v1/curves answers it.
"use strict";

const POINTS = 121;
const plotting = document.querySelector("form.plot");
if (plotting) preparePlot(plotting);

function preparePlot(form) {
  const outcome = document.querySelector(".plotted");
  const chosen = form.elements;
  form.hidden = false;
  chosen.over.addEventListener("change", takeEnds);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    outcome.replaceChildren(element("p", "Working out …"));
    try {
      outcome.replaceChildren(...(await plotted()));
    } catch (error) {
      outcome.replaceChildren(element("p", `No plot came: ${error.message}`, "status stop"));
    }
  });

  function takeEnds() {
    const option = chosen.over.selectedOptions[0];
    chosen.from.value = option.dataset.first;
    chosen.to.value = option.dataset.last;
  }

  async function plotted() {
    const over = chosen.over.value, shown = chosen.column.value;
    const request = JSON.parse(document.querySelector("#try-body")?.value ?? form.dataset.example);
    delete request[over];
    delete request.formats; // a point has no drawing
    const range = { from: Number(chosen.from.value), to: Number(chosen.to.value), count: POINTS };
    const headers = { "Content-Type": "application/json" };
    const key = document.querySelector("#try-key")?.value;
    if (key) headers["X-API-Key"] = key;
    const answer = await fetch(form.dataset.path, {
      method: "POST", headers, body: JSON.stringify({ request, over: { [over]: range }, columns: [shown] }),
    });
    if (answer.status === 401) document.querySelector(".key").hidden = false;
    const body = await answer.json();
    if (!answer.ok) return [element("p", `${answer.status} ${body.title}`, "status"), ...refused(body)];
    return drawn(body, axisNamed(chosen.over, request), axisNamed(chosen.column, request));
  }

  // A length is in the units of the request that is in the form, which may not be the example's.
  function axisNamed(select, request) {
    const { title, unit } = select.selectedOptions[0].dataset;
    const own = (unit === "in" || unit === "mm") && request.units ? request.units : unit;
    return { title, unit: own, named: own ? `${title} (${own})` : title };
  }
}

function drawn(curve, across, up) {
  const xs = curve.axes[0].values, ys = curve.columns[0].values;
  const points = xs.map((x, place) => ({ x, y: ys[place] })).filter(({ y }) => y !== null);
  const notes = element("ul", "", "advised");
  const rank = (one) => SEVERITIES.indexOf(one.severity);
  for (const one of [...curve.advisories].sort((a, b) => rank(a) - rank(b))) {
    const line = element("li", "", one.severity);
    line.append(element("strong", one.severity), ` ${one.code}, ${where(one, xs, across)}: `, ...worded(one.message));
    notes.append(line);
  }
  for (const one of curve.refusals) {
    const line = element("li", "", "caution");
    line.append(element("strong", "refused"), ` ${where(one, xs, across)}: `, ...worded(one.problem.detail));
    notes.append(line);
  }
  const listed = notes.children.length ? [notes] : [];
  if (!points.length) return [...listed, element("p", "No point of this range has a value.", "status")];
  const { svg, mark } = plot(xs, ys, across, up);
  const figure = element("figure", "");
  figure.append(svg, reader(xs, ys, across, up, mark));
  return [...listed, figure];
}

function where(one, xs, across) {
  const runs = one.points.slice(0, 3).map(([a, b]) => (a === b ? figureOf(xs[a]) : `${figureOf(xs[a])} to ${figureOf(xs[b])}`));
  return `at ${across.named} ${runs.join(", ")}${one.points.length > 3 ? " …" : ""}`;
}

// A slider under the plot reads its points: by keyboard as by hand, and said aloud.
function reader(xs, ys, across, up, mark) {
  const label = element("label", `Read the curve at ${across.named} `, "reading");
  const slider = element("input", "");
  Object.assign(slider, { type: "range", min: 0, max: xs.length - 1, step: 1 });
  slider.value = Math.floor(xs.length / 2);
  const said = element("output", "");
  slider.addEventListener("input", show);
  label.append(slider, said);
  show();
  return label;

  function show() {
    const place = Number(slider.value), y = ys[place];
    said.textContent = `${across.title} ${figureOf(xs[place])} ${across.unit}: ${y === null ? "no value" : `${up.title} ${figureOf(y)} ${up.unit}`}`;
    slider.setAttribute("aria-valuetext", said.textContent);
    mark(place);
  }
}

function plot(xs, ys, across, up) {
  const width = Math.max(300, Math.min(720, document.querySelector(".plotted").clientWidth));
  const height = Math.round(Math.max(240, width * 0.55));
  const box = { left: 74, right: width - 16, top: 26, bottom: height - 48 };
  const finite = ys.filter((y) => y !== null);
  const [xTicks, yTicks] = [ticks(Math.min(...xs), Math.max(...xs), width / 90), ticks(Math.min(...finite), Math.max(...finite), height / 55)];
  const low = Math.min(yTicks[0], ...finite), high = Math.max(yTicks.at(-1), ...finite);
  const toX = (x) => box.left + ((x - xs[0]) / (xs.at(-1) - xs[0])) * (box.right - box.left);
  const toY = (y) => box.bottom - ((y - low) / (high - low || 1)) * (box.bottom - box.top);
  const svg = drawnPart("svg", { viewBox: `0 0 ${width} ${height}`, width, height, role: "img", class: "curve" });
  svg.setAttribute("aria-label", `${up.named} over ${across.named}: from ${figureOf(finite[0])} to ${figureOf(finite.at(-1))}.`);
  for (const x of xTicks) {
    svg.append(drawnPart("line", { x1: toX(x), x2: toX(x), y1: box.top, y2: box.bottom, class: "grid" }));
    svg.append(said(figureOf(x), toX(x), box.bottom + 18, "middle"));
  }
  for (const y of yTicks) {
    svg.append(drawnPart("line", { x1: box.left, x2: box.right, y1: toY(y), y2: toY(y), class: "grid" }));
    svg.append(said(figureOf(y), box.left - 8, toY(y) + 4, "end"));
  }
  svg.append(drawnPart("path", { d: `M${box.left} ${box.top}V${box.bottom}H${box.right}`, class: "axis" }));
  svg.append(said(across.named, (box.left + box.right) / 2, height - 8, "middle", "name"));
  svg.append(said(up.named, 4, 14, "start", "name"));
  let path = "", pen = "M";
  ys.forEach((y, place) => {
    if (y === null) { pen = "M"; return; }
    path += `${pen}${toX(xs[place]).toFixed(1)} ${toY(y).toFixed(1)}`;
    pen = "L";
  });
  svg.append(drawnPart("path", { d: path, class: "line" }));
  const dot = drawnPart("circle", { r: 5, class: "dot" });
  svg.append(dot);
  return { svg, mark };

  function mark(place) {
    const y = ys[place];
    dot.setAttribute("visibility", y === null ? "hidden" : "visible");
    dot.setAttribute("cx", toX(xs[place]));
    dot.setAttribute("cy", y === null ? box.bottom : toY(y));
  }
}

// Round values about as many as wanted, from a range.
function ticks(least, most, wanted) {
  const span = most - least || Math.abs(most) || 1;
  const rough = span / Math.max(2, Math.floor(wanted));
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * [1, 2, 5, 10].find((by) => by * power >= rough * 0.999);
  const found = [];
  for (let at = Math.ceil(least / step - 1e-9); at * step <= most + step * 1e-9; at += 1) found.push(at * step);
  return found.length ? found : [least];
}

// To six digits, without an exponent.
function figureOf(value) {
  return Number(value.toPrecision(6)).toLocaleString("en", { maximumSignificantDigits: 6, useGrouping: false });
}

function said(text, x, y, anchor, classes = "") {
  const made = drawnPart("text", { x, y, "text-anchor": anchor, class: classes });
  made.textContent = text;
  return made;
}

function drawnPart(name, attributes) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}
