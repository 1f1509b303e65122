using Abaxial.Load;
using Abaxial.Load.Http;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    ["http", .. var words] when HttpPlan.Read(words) is { } plan => await HttpLoad.RunAsync(plan),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | http ADDRESS [--users N] [--seconds N] [--think MILLISECONDS] [--seed N]");
    return 64;
}
