using Abaxial.Data;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using BadHttpRequestException = Microsoft.AspNetCore.Http.BadHttpRequestException;

namespace Abaxial.Web.Photographs;

/// <summary>Receives a photograph: onto the disk as it comes, decoded to the last pixel, and only then said to be stored.</summary>
internal sealed class PhotographUpload(PhotographSizes sizes, PhotographOptions options) : IDisposable
{
    private readonly SemaphoreSlim receiving = new(options.ReceivedAtOnce, options.ReceivedAtOnce);

    /// <summary>Takes the body of a request. The same bytes may be sent again: the answer is the same.</summary>
    public async Task<IResult> TakeAsync(HttpContext http, CancellationToken cancel)
    {
        const long most = PhotographFolder.MostBytes + PhotographBody.RoomForForm;
        if (http.Request.ContentLength > most) return PhotographAnswers.TooLarge(http.Request.ContentLength);
        if (!await receiving.WaitAsync(TimeSpan.Zero, cancel)) return PhotographAnswers.Busy(http);
        try
        {
            if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = most;
            if (http.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate) rate.MinDataRate = new MinDataRate(options.SlowestBytesPerSecond, options.Grace);
            var body = await PhotographBody.OpenAsync(http.Request, cancel);
            return body.Bytes is { } bytes ? await StoreAsync(bytes, cancel) : PhotographAnswers.Refused(body.Status, "The request holds no photograph.", body.Problem!);
        }
        catch (BadHttpRequestException fault) when (fault.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return PhotographAnswers.TooLarge(null);
        }
        catch (BadHttpRequestException fault)
        {
            return TypedResults.Problem(statusCode: fault.StatusCode, title: "The photograph did not come whole.");
        }
        catch (PhotographsBusyException)
        {
            return PhotographAnswers.Busy(http);
        }
        finally
        {
            receiving.Release();
        }
    }

    public void Dispose() => receiving.Dispose();

    private async Task<IResult> StoreAsync(Stream bytes, CancellationToken cancel)
    {
        var taken = await sizes.TakeInAsync(bytes, cancel);
        var adding = taken.Adding;
        if (adding.IsDiskFull) return TypedResults.Problem(statusCode: StatusCodes.Status507InsufficientStorage, title: adding.Refusal);
        if (adding.Bytes > PhotographFolder.MostBytes) return PhotographAnswers.TooLarge(null);
        if (adding.IsRefused) return PhotographAnswers.Refused(StatusCodes.Status422UnprocessableEntity, "The photograph was not stored.", taken.Problem ?? new CaseProblem("/photograph", "no bytes", [.. PhotographKind.Names]));
        var stored = new PhotographStored(adding.Sha256, taken.MediaType!, adding.Bytes, taken.Width, taken.Height);
        return adding.WasThere ? TypedResults.Ok(stored) : TypedResults.Created($"/api/photographs/{stored.Sha256}/{PhotographSize.Work.Name}", stored);
    }
}
