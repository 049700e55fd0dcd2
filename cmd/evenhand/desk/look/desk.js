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
