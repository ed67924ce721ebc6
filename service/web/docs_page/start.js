"use strict";
SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#page",
  validatorUrl: null,
  deepLinking: true,
  layout: "BaseLayout",
  presets: [SwaggerUIBundle.presets.apis],
});
