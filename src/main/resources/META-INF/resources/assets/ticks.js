// Ticks all lines of a list but those in doubt, or none, without asking the server.
document.addEventListener("click", function (event) {
  "use strict";
  var button = event.target.closest("button[data-ticks]");
  if (!button || !button.form) {
    return;
  }
  event.preventDefault();
  button.form.querySelectorAll("input[name=tick]").forEach(function (box) {
    box.checked = button.dataset.ticks === "all" && (box.checked || !box.dataset.doubt);
  });
});
