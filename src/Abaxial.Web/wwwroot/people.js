// Passkeys and passwords: asks the browser to make or show one, and sends what it gives to the clinic.
const post = async (path, members) => {
  const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(members) });
  if (answer.redirected || answer.status === 403) { location.assign(`/prove?returnUrl=${encodeURIComponent(location.pathname)}`); throw new Error("Show once more that it is you."); }
  if (!answer.ok) throw new Error("The clinic did not take the passkey.");
  return answer.json();
};

const ways = {
  async make() {
    const { options, key } = await post("/api/people/me/passkeys/challenge", {});
    const made = await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(JSON.parse(options)) });
    await post("/api/people/me/passkeys", { key, credential: JSON.stringify(made.toJSON()), name: navigator.userAgentData?.platform ?? "Passkey" });
  },
  async show() {
    const { options, key } = await post("/api/sessions/passkey/challenge", {});
    const shown = await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(JSON.parse(options)) });
    await post("/api/sessions/passkey", { key, credential: JSON.stringify(shown.toJSON()) });
  },
};

for (const button of document.querySelectorAll("[data-passkey]")) {
  if (!window.PublicKeyCredential?.parseCreationOptionsFromJSON) continue;
  button.hidden = false;
  const said = button.parentElement.querySelector("[data-passkey-said]");
  button.addEventListener("click", async () => {
    said.textContent = "";
    try {
      await (button.dataset.passkey === "make" ? ways.make() : ways.show());
      location.assign(button.dataset.return);
    } catch (problem) {
      said.textContent = problem.name === "NotAllowedError" ? "No passkey was chosen." : problem.message;
    }
  });
}

// One letter may be typed in several ways: each way is the same password.
document.addEventListener("submit", event => {
  for (const field of event.target.querySelectorAll("input[type=password]")) field.value = field.value.normalize("NFKC");
}, true);
