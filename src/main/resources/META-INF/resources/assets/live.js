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
