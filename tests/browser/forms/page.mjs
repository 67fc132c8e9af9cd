// A front end of few lines: forms that a generator makes of the contract which a service serves.
import Form from "@rjsf/core";
import { customizeValidator } from "@rjsf/validator-ajv8";
import Ajv2020 from "ajv/dist/2020.js";
import { createElement } from "react";
import { createRoot } from "react-dom/client";

const service = new URLSearchParams(location.search).get("service");
const contract = await (await fetch(`${service}/openapi.json`)).json();
const glossary = await (await fetch(service + contract["x-glossary"])).json();
const components = { schemas: labelled(contract.components.schemas) };
const groups = contract["x-forms"].groups;
const validator = customizeValidator({
  AjvClass: Ajv2020,
  customFormats: { angle: () => true },
});
// Nothing is sent that nobody stated: neither empty objects nor entries of lists.
const stated = { emptyObjectFields: "skipDefaults", arrayMinItems: { populate: "never" } };
const root = createRoot(document.querySelector("main"));

// The generator's own way to label the options of a field.
function labelled(value) {
  if (Array.isArray(value)) return value.map(labelled);
  if (value === null || typeof value !== "object") return value;
  const { enum: tokens, "x-labels": labels, ...rest } = value;
  if (!Array.isArray(tokens) || !labels) {
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, labelled(part)]));
  }
  return { ...rest, oneOf: tokens.map((token) => ({ const: token, title: labels[token] })) };
}

// Fields of the whole request by their groups, the operation's own first; of an object as they are.
function Fields({ fieldPathId, optionalDataControl, properties, schema, title }) {
  const shown = (fields) => fields.map((field) => field.content);
  if (fieldPathId.path.length) {
    const named = glossary[fieldPathId.path.at(-1)]?.title ?? title;
    const legend = createElement("legend", {}, named, optionalDataControl);
    return createElement("fieldset", {}, legend, shown(properties));
  }
  const of = (group) => properties.filter((p) => group.fields.includes(p.name));
  const grouped = groups.flatMap(of);
  const own = properties.filter((p) => !grouped.includes(p));
  const parts = groups.filter((group) => of(group).length).map((group) =>
    createElement(
      "details",
      { key: group.title, open: !isFolded(group, schema) },
      createElement("summary", {}, group.title),
      shown(of(group)),
    )
  );
  return createElement("div", {}, shown(own), parts);
}

const isFolded = (group, schema) =>
  group.advanced && !group.fields.some((field) => schema.required.includes(field));

const resolved = (schema) =>
  schema.$ref ? components.schemas[schema.$ref.split("/").pop()] : schema;

const asksYesOrNo = (request) => {
  const { properties, required = [] } = resolved({ $ref: request });
  return required.some((name) => resolved(properties[name]).type === "boolean");
};

// Show an operation's form, filled in with a request or empty; `window.sent` tells of its sending.
window.show = (path, request) => {
  const content = contract.paths[path].post.requestBody.content["application/json"];
  const schema = { $ref: content.schema.$ref, components };
  const send = async ({ formData }) => {
    const answer = await fetch(service + path, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(formData),
    });
    window.sent = { status: answer.status, request: formData, answer: await answer.json() };
  };
  window.sent = null;
  root.render(createElement(Form, {
    key: `${path} ${Date.now()}`,
    id: path,
    schema,
    validator,
    // A browser's own check takes a required yes or no for one that must be yes.
    noHtml5Validate: asksYesOrNo(content.schema.$ref),
    formData: request,
    templates: { ObjectFieldTemplate: Fields },
    uiSchema: { "ui:globalOptions": { enableOptionalDataFieldForType: ["object"] } },
    experimental_defaultFormStateBehavior: stated,
    onSubmit: send,
    onError: (errors) => { window.sent = { errors: errors.map((e) => e.stack) }; },
  }));
};
window.ready = true;
