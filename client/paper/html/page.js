// Help for readers whose browser runs scripts: sort and filter a table, find a row's part on the drawing. The page reads without it.
"use strict";
{
  const value = (cell) => {
    const v = parseFloat(cell.textContent.replace(/,/g, ""));
    return Number.isNaN(v) ? -Infinity : v;
  };
  const sort = (table, column, numbers, head) => {
    const down = head.getAttribute("aria-sort") !== "descending" && (numbers || head.hasAttribute("aria-sort"));
    for (const h of table.tHead.rows[0].cells) h.removeAttribute("aria-sort");
    head.setAttribute("aria-sort", down ? "descending" : "ascending");
    const body = table.tBodies[0], sign = down ? -1 : 1;
    const rows = [...body.rows].sort((a, b) => sign * (numbers
      ? value(a.cells[column]) - value(b.cells[column])
      : a.cells[column].textContent.localeCompare(b.cells[column].textContent, "en", { numeric: true })));
    body.append(...rows);
  };
  for (const table of document.querySelectorAll("table.sortable")) {
    [...table.tHead.rows[0].cells].forEach((head, column) => {
      const button = document.createElement("button");
      button.type = "button";
      button.setAttribute("aria-label", "sort by " + head.textContent);
      head.append(button);
      button.addEventListener("click", () => sort(table, column, head.classList.contains("number"), head));
    });
    const label = document.createElement("label"), input = document.createElement("input"), count = document.createElement("output");
    label.className = "filter";
    input.type = "search";
    label.append("Filter rows", input, count);
    table.parentElement.before(label);
    input.addEventListener("input", () => {
      const words = input.value.toLowerCase().split(/\s+/);
      let seen = 0;
      for (const row of table.tBodies[0].rows) {
        const text = row.textContent.toLowerCase();
        row.hidden = !words.every((w) => text.includes(w));
        if (!row.hidden) seen++;
      }
      count.textContent = seen + " of " + table.tBodies[0].rows.length;
    });
  }
  // What has the focus stays lit while the mouse is over nothing: the page may have moved under it.
  let focused = false;
  const light = (at, focus) => {
    const part = at instanceof Element && at.closest("[data-id]");
    if (!part && focused && !focus) return;
    focused = Boolean(part && focus);
    for (const e of document.querySelectorAll(".lit")) e.classList.remove("lit");
    if (!part) return;
    const same = (root) => [...root.querySelectorAll("[data-id]")].filter((e) => e.dataset.id === part.dataset.id);
    const here = same(part.closest("section")), others = here.some((e) => e.tagName !== part.tagName);
    for (const e of others ? here : same(document)) e.classList.add("lit");
  };
  document.addEventListener("mouseover", (e) => light(e.target, false));
  document.addEventListener("focusin", (e) => light(e.target, true));
  document.addEventListener("focusout", () => light(null, true));
}
