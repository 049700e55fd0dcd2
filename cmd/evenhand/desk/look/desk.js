// What updates in part. Every page works without this file.
"use strict";

// A form with data-follow="PART" is asked again as it is filled in, and the part of the page with
// that ID is put in place of the old one.
for (const form of document.querySelectorAll("form[data-follow]")) {
  let waiting, asked = 0;
  const follow = async () => {
    const turn = ++asked;
    const address = new URL(form.dataset.ask || form.action, location);
    address.search = new URLSearchParams(new FormData(form));
    const answer = await fetch(address, { headers: { Part: form.dataset.follow } });
    if (!answer.ok || turn !== asked) return;
    document.getElementById(form.dataset.follow).outerHTML = await answer.text();
    if (form.method === "get") history.replaceState(null, "", address);
  };
  form.addEventListener("input", () => { clearTimeout(waiting); waiting = setTimeout(follow, 250); });
}

// The grid of marks is one stop of the Tab key; inside, Enter on an empty cell is right, and on. Each row
// is judged as it is typed and kept when it is left. What could not be sent stays in the page and is
// sent again; nothing of it is put elsewhere in the browser.
for (const grid of document.querySelectorAll("[data-grid]")) {
  const form = grid.closest("form"), state = form.querySelector(".state"), here = form.querySelector(".here"), undo = [];
  let refused = "";
  const rows = [...grid.tBodies[0].rows], cells = row => [...row.querySelectorAll("[data-cell]")];
  const typed = row => {
    const all = new URLSearchParams(new FormData(form)), own = row.dataset.pupil + ".";
    for (const name of [...all.keys()]) if (name === "rest" || name.includes(".") && !name.startsWith(own)) all.delete(name);
    return all;
  };
  const marks = row => cells(row).map(cell => cell.value).join("\n");
  const changed = row => marks(row) !== row.kept;
  let current = cells(grid)[0], was = "", waiting;
  grid.setAttribute("role", "grid");
  form.classList.add("live");
  for (const row of rows) row.kept = marks(row);
  for (const cell of cells(grid)) cell.tabIndex = cell === current ? 0 : -1;

  // take puts what the desk says of a row into it, where nothing else was typed meanwhile.
  const take = (row, fresh, sent, keep) => {
    for (const cell of cells(fresh)) {
      const own = form.elements[cell.name];
      if (own.value !== sent.get(cell.name)) continue;
      own.parentElement.className = cell.parentElement.className;
      for (const name of ["aria-label", "aria-invalid"]) cell.hasAttribute(name) ? own.setAttribute(name, cell.getAttribute(name)) : own.removeAttribute(name);
    }
    row.className = fresh.className;
    row.querySelector(".says").innerHTML = fresh.querySelector(".says").innerHTML;
    if (!keep) return;
    form.elements[row.dataset.pupil + ".revision"].value = fresh.querySelector("[type=hidden]").value;
    document.getElementById("counted").textContent = fresh.dataset.counted;
  };
  const saidOf = cell => cell.closest("tr").querySelector(`[data-of="${cell.name.split(".")[1]}"] span`)?.textContent || "";
  // What the desk says against it is a text; without an answer there is none.
  const notKept = why => {
    refused = typeof why === "string" && why ? why + " " + form.dataset.stays : form.dataset.waiting;
    if (state.textContent !== refused) state.textContent = refused;
  };
  const send = async (row, keep) => {
    const sent = typed(row), marked = marks(row), turn = row.turn = (row.turn || 0) + 1;
    if (!keep) sent.set("do", "judge");
    const answer = await fetch(form.action, { method: "POST", body: sent, headers: { Part: "rows" }, keepalive: true });
    const part = document.createElement("template");
    part.innerHTML = await answer.text();
    if (!answer.ok) throw part.content.querySelector("h1 + p")?.textContent || "";
    const fresh = part.content.getElementById(row.id);
    if (keep || turn === row.turn) take(row, fresh, sent, keep);
    if (keep && !fresh.className) row.kept = marked;
    return fresh.className ? form.dataset.ask : "";
  };
  const keep = row => row.work = (row.work || Promise.resolve()).then(async () => {
    if (!changed(row)) return;
    try {
      state.textContent = await send(row, true) || form.dataset.saved;
      refused = "";
    } catch (why) {
      notKept(why);
      clearTimeout(waiting);
      waiting = setTimeout(keepAll, 3000);
    }
  });
  const keepAll = () => { for (const row of rows) if (row !== current.closest("tr") || !grid.contains(document.activeElement)) keep(row); };
  const judge = async cell => {
    const row = cell.closest("tr");
    try {
      await send(row, false);
      if (saidOf(cell)) state.textContent = cell.name.replace(".", " · ") + " · " + saidOf(cell);
    } catch (why) { notKept(why); }
  };
  const go = cell => { if (cell) cell.focus(); };
  const put = (cell, value) => { undo.push([cell, cell.value]); cell.value = value; was = value; };
  const beside = (dx, dy) => {
    const row = rows.indexOf(current.closest("tr")), at = cells(rows[row]).indexOf(current);
    return rows[row + dy] && cells(rows[row + dy])[at + dx];
  };
  const done = cell => {
    if (cell.value === was) return;
    undo.push([cell, was]);
    was = cell.value;
    judge(cell);
  };
  const on = () => {
    if (current.value.trim() === "" && !current.name.endsWith(".form")) { put(current, "✓"); current.parentElement.className = "right"; } else done(current);
    const row = current.closest("tr"), next = rows[rows.indexOf(row) + 1], first = next && cells(next);
    const absent = current.name.endsWith(".form") && current.value.trim() === "-";
    const to = !absent && beside(1, 0) || first && (first.find(cell => !cell.name.endsWith(".form")) || first[0]);
    to ? go(to) : keep(row);
  };

  // Names stand beside the codes in this window alone: their field has no name, so no form sends it.
  const named = document.querySelector("[data-names]"), list = named?.querySelector("textarea");
  const name = () => {
    const names = {};
    for (const line of list.value.split("\n")) {
      const [, code, number, who] = line.match(/^\s*([^\d\s]+)(\d+)\s*[,;\t]\s*(.*?)\s*$/u) || [];
      if (code) names[code.toUpperCase() + number.padStart(2, "0")] = who.replace(/^"(.*)"$/, "$1");
    }
    for (const row of rows) row.querySelector(".named").textContent = names[row.dataset.pupil] || "";
  };
  if (named) { named.hidden = false; list.addEventListener("input", name); name(); }

  grid.addEventListener("focusin", event => {
    if (!event.target.matches("[data-cell]")) return;
    const before = current.closest("tr");
    current.tabIndex = -1;
    current = event.target;
    current.tabIndex = 0;
    was = current.value;
    current.select();
    here.textContent = current.getAttribute("aria-label") + (saidOf(current) && " · " + saidOf(current));
    if (before !== current.closest("tr")) keep(before);
  });
  grid.addEventListener("focusout", event => {
    if (!event.target.matches("[data-cell]")) return;
    delete event.target.dataset.editing;
    done(event.target);
    if (!grid.contains(event.relatedTarget)) keep(event.target.closest("tr"));
  });
  grid.addEventListener("keydown", event => {
    if (event.target !== current || event.altKey) return;
    const inside = event.ctrlKey || event.metaKey, row = cells(current.closest("tr")), editing = "editing" in current.dataset;
    const all = cells(grid);
    if (inside && event.key === "z") {
      if (current.value !== was) current.value = was;
      else if (undo.length) { const [cell, before] = undo.pop(); cell.value = before; go(cell); was = before; judge(cell); }
    } else if (event.key === "Enter") on();
    else if (event.key === "F2") editing ? delete current.dataset.editing : (current.dataset.editing = "", current.setSelectionRange(99, 99));
    else if (event.key === "Escape") { current.value = was; delete current.dataset.editing; current.select(); }
    else if (editing) return;
    else if (event.key === "ArrowLeft") go(beside(-1, 0));
    else if (event.key === "ArrowRight") go(beside(1, 0));
    else if (event.key === "ArrowUp") go(beside(0, -1));
    else if (event.key === "ArrowDown") go(beside(0, 1));
    else if (event.key === "Home") go(inside ? all[0] : row[0]);
    else if (event.key === "End") go(inside ? all.at(-1) : row.at(-1));
    else return;
    event.preventDefault();
  });
  form.addEventListener("submit", event => event.preventDefault());
  addEventListener("online", keepAll);
  addEventListener("pagehide", () => { for (const row of rows) if (changed(row)) send(row, true).catch(() => {}); });
  addEventListener("beforeunload", event => { if (refused && rows.some(changed)) event.preventDefault(); });
}

// A file dropped on a form with data-drop is sent by it.
for (const form of document.querySelectorAll("form[data-drop]")) {
  for (const kind of ["dragover", "dragleave", "drop"]) form.addEventListener(kind, event => {
    event.preventDefault();
    form.classList.toggle("over", kind === "dragover");
    if (kind !== "drop" || !event.dataTransfer.files.length) return;
    form.elements.list.files = event.dataTransfer.files;
    form.requestSubmit();
  });
}

// What others do is said in one line, while the page is looked at.
const news = document.querySelector("[data-news]");
if (news) {
  let heard;
  const listen = () => {
    if (heard) heard.close();
    heard = document.hidden ? null : new EventSource(news.dataset.news);
    if (heard) heard.onmessage = event => { news.textContent = event.data; };
  };
  document.addEventListener("visibilitychange", listen);
  listen();
}
