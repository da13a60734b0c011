// Triage with the keyboard, folds that stay open, notes that are not lost, and a word when something new comes.
(function () {
  "use strict";
  var SWITCH = "roundsman-triage-keys";
  var WIDE = window.matchMedia("(min-width: 60.01rem)");
  var known = ids();
  var open = [];

  function all(query, from) {
    return Array.prototype.slice.call((from || document).querySelectorAll(query));
  }

  function needy() {
    return all("#alarms > .lines .entry");
  }

  function ids() {
    return needy().map(function (line) { return line.dataset.alarm; });
  }

  // ---- keys can be switched off (WCAG 2.2, 2.1.4) ----
  function keysOn() {
    return window.localStorage.getItem(SWITCH) !== "off";
  }

  function showSwitch() {
    document.documentElement.classList.toggle("keys-off", !keysOn());
    document.getElementById("keys-on").checked = keysOn();
  }

  document.getElementById("keys-on").addEventListener("change", function (event) {
    window.localStorage.setItem(SWITCH, event.target.checked ? "on" : "off");
    showSwitch();
  });

  // ---- one alarm beside the list ----
  function show(id, then) {
    keepDraft();
    window.htmx.ajax("GET", "/triage/alarms/" + id, { target: "#panel", swap: "innerHTML" }).then(function () {
      window.history.replaceState(null, "", "/triage/alarms/" + id);
      document.getElementById("desk").classList.add("opened");
      restoreDraft();
      refreshList(id);
      if (then) {
        then();
      }
    });
  }

  function refreshList(chosen) {
    window.htmx.ajax("GET", "/triage/list?chosen=" + chosen, { target: "#alarms", swap: "outerHTML" });
  }

  // A list that was asked for before another alarm was opened must not bring the former one back.
  document.addEventListener("htmx:configRequest", function (event) {
    var now = document.getElementById("alarm-now");
    if (now && event.detail.path.indexOf("/triage/list?") === 0) {
      event.detail.path = event.detail.path.replace(/chosen=\d+/, "chosen=" + now.dataset.alarm);
    }
  });

  document.addEventListener("click", function (event) {
    var link = event.target.closest("#alarms a.open");
    if (link && WIDE.matches && !event.ctrlKey && !event.metaKey && !event.shiftKey && event.button === 0) {
      event.preventDefault();
      show(link.closest(".entry").dataset.alarm);
    }
  });

  // What was held back while something was pressed is asked for again.
  document.addEventListener("press-over", function () {
    window.htmx.trigger(document.body, "triage-changed");
  });

  // ---- notes that were begun ----
  function keepDraft() {
    var note = document.querySelector("[data-draft]");
    if (note) {
      window.sessionStorage.setItem("roundsman-note-" + note.dataset.draft, note.value);
    }
  }

  function restoreDraft() {
    var note = document.querySelector("[data-draft]");
    var kept = note && window.sessionStorage.getItem("roundsman-note-" + note.dataset.draft);
    if (kept && !note.value) {
      note.value = kept;
    }
  }

  document.addEventListener("input", function (event) {
    if (event.target.matches("[data-draft]")) {
      keepDraft();
    }
  });
  document.addEventListener("submit", function (event) {
    var note = event.target.querySelector("[data-draft]");
    if (note) {
      window.sessionStorage.removeItem("roundsman-note-" + note.dataset.draft);
    }
  });

  // ---- refreshing keeps folds, and tells of what is new ----
  document.addEventListener("htmx:beforeSwap", function () {
    open = all("details[open][id]").map(function (fold) { return fold.id; });
  });
  document.addEventListener("htmx:afterSwap", function () {
    open.forEach(function (id) {
      var fold = document.getElementById(id);
      if (fold) {
        fold.open = true;
      }
    });
    var fresh = needy().filter(function (line) { return known.indexOf(line.dataset.alarm) < 0; });
    if (fresh.length > 0) {
      document.getElementById("triage-news").textContent = "New: " + fresh.map(words).join("; ");
    }
    known = ids();
    title();
  });

  function words(line) {
    return line.querySelector("h3").textContent + ", " + line.querySelector(".where strong").textContent;
  }

  function title() {
    document.title = (known.length > 0 ? "(" + known.length + ") " : "") + "Triage · Roundsman";
  }

  // ---- keys ----
  function links() {
    return all("#alarms a.open").filter(function (link) { return link.getClientRects().length > 0; });
  }

  function step(by) {
    var row = links();
    var at = row.indexOf(document.activeElement);
    if (at < 0) {
      at = row.findIndex(function (link) { return link.getAttribute("aria-current") === "true"; });
      by = 0;
    }
    var next = row[Math.max(0, Math.min(row.length - 1, at + by))];
    if (next) {
      next.focus();
    }
  }

  // The line that the keyboard is at, else the alarm that is open.
  function place() {
    return document.activeElement.closest("#alarms .entry") || document.getElementById("alarm-now");
  }

  function press(key) {
    var form = place() && place().querySelector("form[data-key='" + key + "']");
    if (form) {
      form.requestSubmit();
    }
  }

  function go(id) {
    var wanted = place();
    var shown = document.getElementById("alarm-now");
    function focus() {
      var field = document.getElementById(id);
      if (field) {
        field.focus();
        field.scrollIntoView({ block: "center" });
      }
    }
    if (!wanted || (shown && shown.dataset.alarm === wanted.dataset.alarm && shown.getClientRects().length > 0)) {
      focus();
    } else if (WIDE.matches) {
      show(wanted.dataset.alarm, focus);
    } else {
      window.location.href = "/triage/alarms/" + wanted.dataset.alarm + "#" + id;
    }
  }

  function keys() {
    var fold = document.getElementById("keys");
    fold.open = !fold.open;
  }

  var ACTS = {
    j: function () { step(1); },
    k: function () { step(-1); },
    a: function () { press("a"); },
    t: function () { press("t"); },
    n: function () { go("text"); },
    s: function () { go("length"); },
    c: function () { go("close-alarm"); },
    "?": keys
  };

  document.addEventListener("keydown", function (event) {
    var typing = event.target.closest("input, textarea, select");
    if (typing || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) {
      return;
    }
    var inList = event.target.closest("#alarms");
    if (inList && (event.key === "ArrowDown" || event.key === "ArrowUp")) {
      event.preventDefault();
      step(event.key === "ArrowDown" ? 1 : -1);
      return;
    }
    if (keysOn() && Object.prototype.hasOwnProperty.call(ACTS, event.key)) {
      event.preventDefault();
      ACTS[event.key]();
    }
  });

  showSwitch();
  restoreDraft();
  title();
})();
