// Measures, and asserts nothing: benchmarks (the arguments are BenchmarkDotNet's), `stream` for a long stream, `browser` for the published page.
using Abaxial.Benchmarks;
using Abaxial.Benchmarks.Figures;
using BenchmarkDotNet.Running;

switch (args)
{
    case ["stream"]:
        StreamFigures.Print();
        break;
    case ["browser"]:
        await BrowserFigures.PrintAsync();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, Measuring.Config);
        break;
}
