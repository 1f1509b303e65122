using Abaxial.Cli.Streams;
using CsCheck;

namespace Abaxial.Tests.Cli;

public sealed class OrderedPipelineTests
{
    [Fact]
    public void Results_come_in_the_order_of_the_inputs_whatever_takes_longer() =>
        Gen.Int[0, 300].Array[0, 200].Sample(
            spins =>
            {
                var taken = new List<int>();
                Run(Enumerable.Range(0, spins.Length), i => Spin(spins[i], i), taken.Add, 8);
                Assert.Equal(Enumerable.Range(0, spins.Length), taken);
            },
            iter: 50);

    [Fact]
    public void No_more_is_held_than_is_allowed()
    {
        int read = 0, taken = 0, most = 0;
        Run(Enumerable.Range(0, 500).Select(i => { read++; return i; }), i => i, _ => most = Math.Max(most, Volatile.Read(ref read) - taken++), 8);
        Assert.Equal(500, taken);
        Assert.InRange(most, 1, 8 + 3);
    }

    [Fact]
    public void What_fails_in_any_step_is_thrown()
    {
        Assert.Throws<IOException>(() => Run(Broken(), i => i, _ => { }, 4));
        Assert.Throws<InvalidOperationException>(() => Run(Enumerable.Range(0, 100), i => i == 50 ? throw new InvalidOperationException("work") : i, _ => { }, 4));
        Assert.Throws<InvalidDataException>(() => Run(Enumerable.Range(0, 100), i => i, i => { if (i == 50) throw new InvalidDataException("take"); }, 4));
    }

    private static void Run(IEnumerable<int> inputs, Func<int, int> work, Action<int> take, int ahead) =>
        OrderedPipeline.RunAsync(inputs, work, take, ahead).GetAwaiter().GetResult();

    private static int Spin(int times, int result)
    {
        Thread.SpinWait(times * 10);
        return result;
    }

    private static IEnumerable<int> Broken()
    {
        yield return 1;
        throw new IOException("input");
    }
}
