// Reviewing reports with the keyboard, and remarks that are not lost.
(function () {
  "use strict";
  var SWITCH = "roundsman-report-keys";
  var DRAFT = "roundsman-remark-";

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

  // ---- a remark that was begun ----
  var remark = document.getElementById("remark");

  if (remark) {
    var kept = window.sessionStorage.getItem(DRAFT + remark.dataset.draft);
    if (kept !== null) {
      remark.value = kept;
    }
    remark.addEventListener("input", function () {
      window.sessionStorage.setItem(DRAFT + remark.dataset.draft, remark.value);
    });
    remark.form.addEventListener("submit", function () {
      window.sessionStorage.removeItem(DRAFT + remark.dataset.draft);
    });
  }

  // ---- keys ----
  function press(id) {
    var target = document.getElementById(id);
    if (target) {
      target.click();
    }
  }

  function write() {
    if (remark) {
      remark.focus();
      remark.scrollIntoView({ block: "center" });
    }
  }

  function keys() {
    var fold = document.getElementById("keys");
    fold.open = !fold.open;
  }

  var ACTS = {
    a: function () { press("approve-next"); },
    n: function () { press("go-next"); },
    p: function () { press("go-previous"); },
    r: write,
    "?": keys
  };

  document.addEventListener("keydown", function (event) {
    var typing = event.target.closest("input, textarea, select");
    // A key that is held down would approve one report after the other.
    if (typing || event.repeat || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) {
      return;
    }
    if (keysOn() && Object.prototype.hasOwnProperty.call(ACTS, event.key)) {
      event.preventDefault();
      ACTS[event.key]();
    }
  });

  showSwitch();
})();
