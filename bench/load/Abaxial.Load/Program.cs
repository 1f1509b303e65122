using Abaxial.Load;
using Abaxial.Load.Http;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["photographs", var folder, .. var files] => await PhotographBombs.RunAsync(folder, files),
    ["many-photographs", var folder, var jpeg, var count] => await PhotographBombs.RunManyAsync(folder, jpeg, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    ["rate", var folder] => await WriteRate.RunAsync(folder),
    ["http", .. var words] when HttpPlan.Read(words) is { } plan => await HttpLoad.RunAsync(plan),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | rate FOLDER | photographs FOLDER FILE... | many-photographs FOLDER JPEG COUNT | http ADDRESS [--users N] [--seconds N] [--think MILLISECONDS] [--seed N]");
    return 64;
}
