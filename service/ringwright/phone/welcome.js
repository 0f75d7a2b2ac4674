// Asks the secure address for a sign of life: it comes only to a phone that trusts the certificate.
const secure = document.body.dataset.secure;
const state = document.getElementById("state");

async function look() {
  try {
    await fetch(secure + "healthz", { mode: "no-cors", cache: "no-store" });
    state.textContent = "This phone trusts the machine: open the app.";
    state.classList.add("yes");
  } catch {
    state.textContent = "This phone does not trust the machine yet: go through the steps below, then come back.";
    state.classList.remove("yes");
  }
}

void look();
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") void look();
});
