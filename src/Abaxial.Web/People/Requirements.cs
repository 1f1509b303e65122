using Microsoft.AspNetCore.Builder;

namespace Abaxial.Web.People;

/// <summary>An endpoint or page is for those with a right. What says nothing is for everybody who is signed in; only AllowAnonymous opens it to others.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method, AllowMultiple = true)]
internal sealed class RequireRightAttribute(Right right) : Attribute
{
    public Right Right { get; } = right;
}

/// <summary>What it does is sensitive: the person has to have proved to be themselves a short while ago.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class RequireProofAttribute : Attribute;

/// <summary>It is about the person's own account, and so not for devices, nor for visitors of a demo.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class RequireAccountAttribute : Attribute;

/// <summary>Marks endpoints with what they ask of a person.</summary>
internal static class Requirements
{
    public static TBuilder RequireRight<TBuilder>(this TBuilder endpoint, Right right)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new RequireRightAttribute(right));

    public static TBuilder RequireProof<TBuilder>(this TBuilder endpoint)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new RequireProofAttribute());

    public static TBuilder RequireAccount<TBuilder>(this TBuilder endpoint)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new RequireAccountAttribute());
}
