// Draws the specification in the place of the plain list of calculations.
"use strict";

SwaggerUIBundle({
  url: "/docs/specification.json",
  domNode: document.getElementById("reference"),
  // Shows a badge from another address otherwise.
  validatorUrl: null,
  deepLinking: true,
  // Hundreds of schemas below the calls: each call shows its own.
  defaultModelsExpandDepth: -1,
  defaultModelExpandDepth: 3,
  // Colours cost seconds on an answer of a thousand lines.
  syntaxHighlight: { activated: false },
  displayRequestDuration: true,
});
