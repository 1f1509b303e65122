// Starts the library and puts its two functions where a test finds them: abaxial.weigh and abaxial.millisecondsPerAnswer.
const state = document.getElementById("state");
try {
  await Blazor.start();
  const { Abaxial } = await Blazor.runtime.getAssemblyExports("Abaxial.Tests.Page.dll");
  const { Weigh, MillisecondsPerAnswer } = Abaxial.Tests.Page.Bridge;
  window.abaxial = { weigh: Weigh, millisecondsPerAnswer: MillisecondsPerAnswer };
  state.textContent = "ready";
} catch (problem) {
  state.textContent = `failed: ${problem}`;
}
