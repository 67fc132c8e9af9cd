// The packaged page of forms, told where the contract is and to look nowhere else.
"use strict";

const dark = matchMedia("(prefers-color-scheme: dark)");
dark.addEventListener("change", followScheme);
followScheme();
showForms();

function followScheme() {
  document.documentElement.classList.toggle("dark-mode", dark.matches);
}

async function showForms() {
  const answer = await fetch("/openapi.json", { cache: "no-cache" });
  const contract = await answer.json();
  // The packaged page warns of any dialect that is not its own.
  delete contract.jsonSchemaDialect;
  // There is one server, the one that this page came from: nothing to choose.
  delete contract.servers;
  SwaggerUIBundle({
    spec: contract,
    dom_id: "#forms",
    deepLinking: true,
    docExpansion: "none",
    defaultModelsExpandDepth: -1,
    tryItOutEnabled: true,
    syntaxHighlight: false,
    validatorUrl: null,
    // Says that a script asks: else a browser would ask for the key in its own dialog.
    requestInterceptor: (request) => {
      request.headers["X-Requested-With"] = "fetch";
      return request;
    },
    showMutatedRequest: false,
  });
}
