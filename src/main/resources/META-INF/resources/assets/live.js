// Says so when a page that refreshes itself shows the past, because the server no longer answers.
(function () {
  "use strict";
  var since = null;
  // Forms that send themselves need no button.
  document.documentElement.classList.add("live");

  function note(text) {
    var place = document.getElementById("live-note");
    if (place) {
      place.textContent = text;
    }
  }

  // What is asked for every second need not be while nobody looks.
  document.addEventListener("htmx:beforeRequest", function (event) {
    if (document.hidden && event.detail.elt.hasAttribute("data-while-seen")) {
      event.preventDefault();
    }
  });

  // A press begins and ends on the same thing, or it is none: what refreshes itself in between waits, and comes again.
  var pressed = null;
  var waiting = false;

  function released() {
    pressed = null;
    if (waiting) {
      waiting = false;
      document.dispatchEvent(new Event("press-over"));
    }
  }

  document.addEventListener("pointerdown", function (event) {
    pressed = event.button === 0 ? event.target : null;
  });
  ["pointerup", "pointercancel"].forEach(function (end) {
    // the press itself is told after its end
    document.addEventListener(end, function () { window.setTimeout(released, 0); });
  });
  window.addEventListener("blur", released);

  // Whether nobody asked for it: the part asks again and again.
  function refreshes(detail) {
    var by = detail.requestConfig && detail.requestConfig.triggeringEvent;
    var person = by && ["click", "submit", "change", "input"].indexOf(by.type) >= 0;
    return !person && (detail.target.getAttribute("hx-trigger") || "").indexOf("every") >= 0;
  }

  document.addEventListener("htmx:beforeSwap", function (event) {
    if (pressed && event.detail.target.contains(pressed) && refreshes(event.detail)) {
      event.detail.shouldSwap = false;
      waiting = true;
    }
  });

  document.addEventListener("htmx:afterRequest", function (event) {
    if (event.detail.successful) {
      since = null;
      note("");
      return;
    }
    since = since || new Date();
    note("No good answer from the server since " + since.toLocaleTimeString() +
      ". What you see is from before; the page keeps trying.");
  });
})();
