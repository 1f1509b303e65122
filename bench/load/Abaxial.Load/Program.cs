using Abaxial.Load;
using Abaxial.Load.Filling;
using Abaxial.Load.Http;
using Abaxial.Load.Measuring;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    ["fill", .. var words] when FillPlan.Read(words) is { } plan => await StoreFill.RunAsync(plan),
    ["measure", var folder] => await StoreMeasure.RunAsync(folder, null, 300),
    ["measure", var folder, "--postgres", var connection] => await StoreMeasure.RunAsync(folder, connection, 300),
    ["http", .. var words] when HttpPlan.Read(words) is { } plan => await HttpLoad.RunAsync(plan),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | fill FOLDER [--samples N] [--entries N] [--seed N] [--postgres CONNECTION] | measure FOLDER [--postgres CONNECTION] | http ADDRESS [--users N] [--seconds N] [--think MILLISECONDS] [--seed N]");
    return 64;
}
