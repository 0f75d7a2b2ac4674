// Puts the address of this very service where the pages name the usual one, so that what is copied works.
"use strict";

const USUAL = "http://127.0.0.1:8000";

for (const code of document.querySelectorAll("code")) {
  if (code.textContent.includes(USUAL)) code.textContent = code.textContent.replaceAll(USUAL, location.origin);
}
