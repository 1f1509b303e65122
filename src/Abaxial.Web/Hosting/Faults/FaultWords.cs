namespace Abaxial.Web.Hosting.Faults;

/// <summary>What is said of a request that came to nothing: a title, and what to do.</summary>
internal static class FaultWords
{
    public static (string Title, string Detail) Of(int status) => status switch
    {
        400 => ("The request cannot be read", "Something in it is missing or is not in its form."),
        401 => ("Nobody is signed in", "Sign in, then try again."),
        403 => ("This may not be done", "The one who is signed in may not do it, or the request came from another site."),
        404 => ("There is nothing here", "The address is wrong, or what it names is not yours to see."),
        405 => ("This is not done so", "The address is right; the method is not. The header Allow names those that are."),
        408 => ("The request came too slowly", "Try again where the connection is better."),
        409 => ("It was done otherwise before", "The same key was sent with other content."),
        413 => ("That is too large", "A request has at most 1 MiB; one that brings a photograph at most 100 MiB."),
        415 => ("This kind of content is not taken", "The header Content-Type has to say what is sent, and it has to be a kind that is taken here."),
        421 => ("This clinic is not called so", "Use the address that the clinic was given as its own."),
        429 => ("Too many requests", "Wait as long as the header Retry-After says, in seconds."),
        431 => ("The head of the request is too large", "Delete the cookies of this site, then try again."),
        503 => ("The clinic cannot answer now", "Try again in a minute."),
        504 => ("The answer took too long", "It was given up. Try again."),
        >= 500 => ("The program failed", "It is a fault of the program. Tell whoever runs the clinic the number below."),
        _ => ("The request was refused", "It cannot be done so."),
    };
}
